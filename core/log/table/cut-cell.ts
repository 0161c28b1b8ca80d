/** Bytes before the last row that are held against it: some rows of 300 columns. */
export const rowsHeld_bytes = 16_384;
/** Fewer rows say nothing of how a column is written (common practice). */
const fewestRows = 8;
const rowsLookedAt = 40;
/** A whole number that lost a digit has a tenth of its size; half of that leaves room for what it changed by. */
const smallestShare = 1 / 5;

/**
 * Whether the last number of a file without a line end at its end lost digits, as where a logger lost its power: fewer
 * decimals than each row before it, or fewer digits and a fraction of their size.
 *
 * @param text       rows at the end of the file, the first of them maybe in part
 * @param delimiter  blanks tell nothing of where a cell ends
 */
export function isLastCellCut(text: string, delimiter: string): boolean {
  if (delimiter === ' ') return false;
  const lines = text.split(/\r\n?|\n/).filter((line) => line.trim() !== '');
  const [last = [], ...before] = lines
    .slice(-rowsLookedAt)
    .reverse()
    .map((line) => line.split(delimiter));
  const rows = before.filter((cells) => cells.length === last.length).map((cells) => partsOf(cells.at(-1)));
  const whole = rows.filter((parts) => parts !== null);
  const cut = partsOf(last.at(-1));
  if (!cut || rows.length < fewestRows || whole.length < rows.length) return false;
  const decimals = whole[0]?.decimals ?? 0;
  if (whole.some((parts) => parts.decimals !== decimals)) return false;
  if (decimals > 0) return cut.decimals < decimals;
  return whole.every((p) => cut.digits < p.digits && cut.size <= smallestShare * p.size);
}

function partsOf(cell: string | undefined): { digits: number; decimals: number; size: number } | null {
  const m = /^\s*[-+]?(\d+)(?:[.,](\d*))?\s*$/.exec(cell ?? '');
  if (!m) return null;
  const [, whole = '', part = ''] = m;
  return { digits: whole.length, decimals: part.length, size: Number(`${whole}.${part}`) };
}
