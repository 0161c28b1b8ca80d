import type { Cell } from './cell.ts';

/** No position is written in more characters. */
const longestPosition = 40;

const number = String.raw`\d+(?:[.,]\d*)?`;
const between = (marks: string) => String.raw`(?:\s*(?:${marks})\s*|\s*[:-]\s*|\s+)`;
const degreeMark = between('[°º˚]|deg\\.?|grad|d');
const minuteMark = between("['’′´`]|min|m");
const positionForm = new RegExp(
  String.raw`^([-+]?)(${number})(?:${degreeMark}(${number})(?:${minuteMark}(${number}))?)?\s*(?:[°º˚]|['’′´${'`'}]{1,2}|["”″]|deg\.?|grad|min|sec|[dms])?$`,
  'i',
);

/**
 * Degrees of a cell of latitude or longitude, south and west negative: `52°30.1' N`, `N52.5`, `52 30 06 N`, `52:30:06`,
 * `13,4 E`. One number with its letter is returned as it stands, which may be degrees and minutes in one,
 * `5230.12345,N`. Null where the text is no position.
 *
 * The letter O is east to a German and west in French, Italian and Spanish: it counts as east unless `isRomance`.
 *
 * @param isRomance  the header is Italian or Spanish
 * Check: 52°30'06" N is 52.501667.
 */
export function positionCell(text: string, isRomance: boolean): Cell | null {
  if (text.length > longestPosition) return null;
  const t = text.replace('\u2212', '-').trim();
  const front = /^([NSEWO])\s*(?=[-+\d])/i.exec(t)?.[1];
  const behind = /[^a-z]\s*([NSEWO])\.?$/i.exec(t)?.[1];
  if (front !== undefined && behind !== undefined) return null;
  const bare = (front === undefined ? t : t.slice(1)).trim();
  const rest = behind === undefined ? bare : bare.replace(/[,\s]*[a-z]\.?$/i, '');
  const m = positionForm.exec(rest);
  if (!m) return null;
  const [, sign, whole = '', min, s] = m;
  const parts = [whole, min ?? '0', s ?? '0'].map((part) => Number(part.replace(',', '.')));
  const [degrees = 0, minutes = 0, seconds = 0] = parts;
  const isBroken = (min !== undefined && !isWhole(whole)) || (s !== undefined && !isWhole(min));
  if (isBroken || minutes >= 60 || seconds >= 60) return null;
  const letter = (front ?? behind ?? '').toUpperCase();
  const isNegative = sign === '-' || letter === 'S' || letter === 'W' || (letter === 'O' && isRomance);
  const size = degrees + minutes / 60 + seconds / 3600;
  return { value: isNegative ? -size : size, flag: 0, kind: 'position', unit: '' };
}

/** Only the last part of a position has decimals. */
function isWhole(part: string | undefined): boolean {
  return part !== undefined && !/[.,]/.test(part);
}

/**
 * Whether a text is a position whatever column it stands in: a letter of the hemisphere and parts, decimals or a degree
 * sign. `O2`, `N75` and `E85` are names.
 */
export function isPlainlyPosition(text: string): boolean {
  return (
    /^\s*[NSEWO]|[NSEWO]\.?\s*$/i.test(text) &&
    /\d\s*[.,:°º'′-]\s*\d|\d\s+\d|\d\s*[°º]/.test(text) &&
    positionCell(text, false) !== null
  );
}
