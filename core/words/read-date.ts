import { type Language, locales } from './show.ts';

/** Months as a language writes them, long and short, in small letters. */
function monthOf(name: string, language: Language): number | null {
  const asked = name.toLowerCase().replace(/\.$/, '');
  for (const style of ['long', 'short'] as const) {
    const { format } = new Intl.DateTimeFormat(locales[language], { month: style, timeZone: 'UTC' });
    for (let month = 0; month < 12; month++)
      if (
        format(Date.UTC(2027, month, 1))
          .toLowerCase()
          .replace(/\.$/, '') === asked
      )
        return month + 1;
  }
  return null;
}

/**
 * A day as a person types it, as `2027-03-14`; null where it is none. The day comes first, as both languages write it
 * here: `14.3.2027`, `14/03/27`, `14 March 2027`, `14. März 2027`; or the year, `2027-03-14`.
 */
export function readDate(text: string, language: Language): string | null {
  const plain = text.trim();
  const year = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/.exec(plain);
  const day = /^(\d{1,2})[-./]\s?(\d{1,2})[-./]\s?(\d{4}|\d{2})$/.exec(plain);
  const named = /^(\d{1,2})\.?\s+(\p{L}+\.?)\s+(\d{4})$/u.exec(plain);
  const [y, m, d] = year
    ? [year[1], Number(year[2]), year[3]]
    : day
      ? [day[3], Number(day[2]), day[1]]
      : [named?.[3], monthOf(named?.[2] ?? '', language), named?.[1]];
  if (y === undefined || m === null || d === undefined) return null;
  const full = y.length === 2 ? 2000 + Number(y) : Number(y);
  const at = new Date(Date.UTC(full, m - 1, Number(d)));
  // 31 April is no day.
  const isDay = full >= 1000 && at.getUTCMonth() === m - 1 && at.getUTCDate() === Number(d);
  return isDay ? at.toISOString().slice(0, 10) : null;
}
