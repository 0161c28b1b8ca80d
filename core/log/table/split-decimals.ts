/** A carry seen so often is none by chance. */
const fewestCarries = 3;
/** Rows that tell. */
const fewestRows = 20;

/**
 * How many columns are the decimals of the column before, cut off by a comma that parts cells too: digits alone, as
 * many in every row, behind whole numbers; and either a zero in front, as in `05`, which stands before no other whole
 * number, or decimals that jump wherever the whole number moves on by one, as from 12,9 to 13,1.
 *
 * @param rows  cells, as many in each
 */
export function splitDecimals(rows: readonly (readonly string[])[]): number {
  if (rows.length < fewestRows) return 0;
  const width = rows[0]?.length ?? 0;
  let count = 0;
  for (let c = 1; c < width; c++) {
    if (!areDecimals(rows, c)) continue;
    count++;
    // The next column can't be the decimals of decimals.
    c++;
  }
  return count;
}

function areDecimals(rows: readonly (readonly string[])[], column: number): boolean {
  const digits = rows.map((row) => (row[column] ?? '').trim());
  const whole = rows.map((row) => (row[column - 1] ?? '').trim());
  const length = digits[0]?.length ?? 0;
  if (!digits.every((d) => /^\d{1,6}$/.test(d) && d.length === length)) return false;
  if (!whole.every((w) => /^[-+]?\d+$/.test(w))) return false;
  if (length > 1 && digits.some((d) => d.startsWith('0')) && digits.some((d) => !/^0+$/.test(d))) return true;
  const half = 10 ** length / 2;
  let carries = 0;
  let steps = 0;
  for (let i = 1; i < rows.length; i++) {
    const step = Number(whole[i]) - Number(whole[i - 1]);
    if (Math.abs(step) !== 1) continue;
    steps++;
    // Up by one, the decimals fall; down by one, they rise. Below zero it is the other way round.
    const sign = (whole[i] ?? '').startsWith('-') ? -1 : 1;
    if (sign * step * (Number(digits[i - 1]) - Number(digits[i])) > half / 2) carries++;
  }
  return carries >= fewestCarries && carries >= 0.8 * steps;
}
