/**
 * Seconds of a time of day or a stop watch, `14:03:12.345`, `03:12.345`, `2:03:12,345 pm`, `14:03:12:345`; NaN
 * where the text is none. Two parts are minutes and seconds.
 *
 * Check: 01:02:03.5 is 3723.5.
 */
export function clockSeconds(text: string): number {
  const m = /^\s*(-)?(?:(\d{1,3}):)?(\d{1,3}):(\d{1,2})(?:[.,:](\d{1,9}))?\s*([ap]\.?\s?m\.?)?\s*$/i.exec(
    text,
  );
  if (!m) return Number.NaN;
  const [, minus, h = '0', min = '0', s = '0', fraction = '', half] = m;
  if (Number(s) > 60 || (m[2] !== undefined && Number(min) > 59)) return Number.NaN;
  let hours = Number(h);
  if (half) hours = (hours % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0);
  // One division at the end keeps 12.345 the double nearest to 12.345.
  const scale = 10 ** fraction.length;
  const whole = hours * 3600 + Number(min) * 60 + Number(s);
  const value = (whole * scale + Number(fraction || '0')) / scale;
  return minus ? -value : value;
}

/**
 * Seconds since 1970 of a date with time as written, zone left aside: ISO 8601 (`2027-03-14T10:15:00.250Z`,
 * `2027-03-14 10:15:00`, `20270314T101500`), also `14.03.2027 10:15:00`, `14/03/2027 10:15:00` and
 * `03/14/2027 10:15:00 PM`, `14-Mar-2027 10:15:00`, `March 14, 2027 10:15:00 UTC`. NaN where the text is none.
 *
 * Valid:  the clock as a person reads it; a change of zone or summer time within a file shows as a reset.
 * Source: ISO 8601-1:2019 (form, from memory).
 * Check:  1970-01-02T00:00:01 is 86401.
 */
export function stampSeconds(text: string): number {
  const t = monthByNumber(text.trim().replace(/\s+[A-Z]{3,5}$/, ''));
  let m =
    /^(\d{4})-?(\d{2})-?(\d{2})[T ]+(\d{2}):?(\d{2}):?(\d{2})?(?:[.,](\d{1,9}))?\s*(?:Z|[+-]\d{2}:?\d{0,2})?$/i.exec(
      t,
    );
  if (m) return secondsOf(Number(m[1]), Number(m[2]), Number(m[3]), m[4], m[5], m[6], m[7]);
  m = /^(\d{4})\/(\d{1,2})\/(\d{1,2})[T ]+(\d{1,2}):(\d{2}):(\d{2})(?:[.,:](\d{1,9}))?$/.exec(t);
  if (m) return secondsOf(Number(m[1]), Number(m[2]), Number(m[3]), m[4], m[5], m[6], m[7]);
  m =
    /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})[T ,]+(\d{1,2}):(\d{2})(?::(\d{2}))?(?:[.,:](\d{1,9}))?\s*([ap]\.?\s?m\.?)?$/i.exec(
      t,
    );
  if (!m) return Number.NaN;
  // Day first, unless the second number can only be a day or the hours are counted to twelve, as where months lead.
  const [a, b] = [Number(m[1]), Number(m[2])];
  const half = m[8];
  const monthLeads = b > 12 || (half !== undefined && a <= 12);
  const hours = half === undefined ? m[4] : `${(Number(m[4]) % 12) + (/^p/i.test(half) ? 12 : 0)}`;
  return secondsOf(Number(m[3]), monthLeads ? a : b, monthLeads ? b : a, hours, m[5], m[6], m[7]);
}

/** First letters of the months in the languages that headers are read in, no accents. */
const months: readonly (readonly string[])[] = [
  ['jan', 'ene', 'gen', 'sty'],
  ['feb', 'fev', 'lut'],
  ['mar', 'mrz', 'maa'],
  ['apr', 'avr', 'abr', 'kwi'],
  ['may', 'mai', 'mag', 'mei', 'maj'],
  ['jun', 'juin', 'giu', 'cze'],
  ['jul', 'juil', 'lug', 'lip'],
  ['aug', 'aou', 'ago', 'sie'],
  ['sep', 'set', 'wrz'],
  ['oct', 'okt', 'ott', 'paz'],
  ['nov', 'lis'],
  ['dec', 'dez', 'dic', 'gru'],
];

/** `14-Mar-2027`, `March 14, 2027`, `14. März 2027` as `2027-03-14`; any other text as it stands. */
function monthByNumber(text: string): string {
  const m = /^(?:(\d{1,2})[. -]+(\p{L}{3,10})|(\p{L}{3,10})\.? (\d{1,2}),?)[. -]+(\d{4})(?=\D)/u.exec(text);
  const word = m?.[2] ?? m?.[3];
  if (!m || word === undefined) return text;
  const plain = word
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase();
  const at = months.findIndex((names) => names.some((name) => plain.startsWith(name)));
  return at < 0
    ? text
    : `${m[5]}-${pad(at + 1)}-${pad(Number(m[1] ?? m[4]))} ${text.slice(m[0].length).trim()}`;
}

function pad(n: number): string {
  return String(n).padStart(2, '0');
}

function secondsOf(
  year: number,
  month: number,
  day: number,
  h = '0',
  min = '0',
  s = '0',
  fraction = '',
): number {
  if (month < 1 || month > 12 || day < 1 || day > 31 || Number(h) > 24 || Number(min) > 59 || Number(s) > 60)
    return Number.NaN;
  const whole = Date.UTC(year, month - 1, day, Number(h), Number(min), Number(s)) / 1000;
  const scale = 10 ** fraction.length;
  return fraction === '' ? whole : whole + Number(fraction) / scale;
}
