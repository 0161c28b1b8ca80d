import { findLayout } from '../table/layout.ts';
import { sideTable } from '../table/lies-on-side.ts';
import { tokenise } from '../table/tokenise.ts';

/**
 * Rows of cells of a table that lies on its side, set upright: names in the first row, below them what stood
 * behind them. None where the table stands upright.
 */
export function rowsSetUpright(text: string): string[][] {
  const layout = findLayout(text);
  if (!layout || !sideTable(layout, text)) return [];
  const lines = text.split(/\r\n?|\n/).slice(layout.firstDataLine - 1);
  const channels = lines
    .filter((line) => line.trim() !== '')
    .map((line) => (tokenise(line, layout.delimiter)[0] ?? []).map((cell) => cell.trim()));
  const length = channels.reduce((most, cells) => Math.max(most, cells.length), 0);
  return Array.from({ length }, (_, i) => channels.map((cells) => cells[i] ?? ''));
}
