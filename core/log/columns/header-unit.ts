import { shortenedName } from './column-words.ts';
import { type FoundUnit, parseUnit } from './unit-words.ts';

/** A header parted into what is measured and in what. */
export type HeaderParts = {
  readonly name: string;
  readonly unitText: string;
  readonly unit: FoundUnit | null;
};

/** Single letters that are a unit at the end of a header even without brackets: `Coolant C`, `IAT_F`. */
const bareLetters = new Set(['s', 'c', 'f', 'k', 'v', 'g', 'm', '%', '°']);

/**
 * Parts a header: `Boost [psi]`, `Coolant (°C)`, `speed_km_h`, `Zeit in s`, `Throttle %`, `RPM`. A header that
 * is a unit and no more, as `RPM`, keeps its text as name.
 */
export function headerParts(header: string): HeaderParts {
  const text = shortenedName(header)
    .replace(/ \(\d+\)$/, '')
    // Brackets and blanks as wide as an ideograph.
    .replace(/[\uff08\uff09\uff3b\uff3d\u3000]/g, (wide) => wide.normalize('NFKC'))
    .trim();
  const bracket = /^(.*?)\s*[[({<]([^[\](){}<>]{0,30})[\])}>]\s*(.*)$/.exec(text);
  if (bracket?.[1] !== undefined && bracket[2] !== undefined) {
    const unit = parseUnit(bracket[2]);
    if (unit && bracket[1] !== '')
      return { name: `${bracket[1]} ${bracket[3] ?? ''}`.trim(), unitText: bracket[2].trim(), unit };
  }
  const whole = parseUnit(text);
  if (whole && whole.unit !== '' && whole.unit !== '1') return { name: text, unitText: text, unit: whole };
  const tokens = text.split(/[\s_,;:]+/).filter((t) => t !== '');
  for (let take = Math.min(3, tokens.length - 1); take >= 1; take--) {
    const tail = tokens.slice(-take);
    for (const joint of ['', '/', ' ']) {
      const candidate = tail.join(joint);
      const unit = parseUnit(candidate);
      if (!unit || unit.unit === '' || unit.unit === '1') continue;
      if (candidate.length === 1 && !bareLetters.has(candidate.toLowerCase())) continue;
      const name = tokens
        .slice(0, -take)
        .join(' ')
        .replace(/\s+(in|en)$/i, '');
      return { name, unitText: tail.join(take > 1 && joint === '/' ? '/' : ' '), unit };
    }
  }
  const sign = /^(.*\S)\s*(%|°C|°F|°)$/i.exec(text);
  if (sign?.[1] !== undefined && sign[2] !== undefined)
    return { name: sign[1], unitText: sign[2], unit: parseUnit(sign[2]) };
  return { name: text, unitText: '', unit: null };
}
