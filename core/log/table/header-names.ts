import { headerParts } from '../columns/header-unit.ts';
import { matchName } from '../columns/name-match.ts';
import { parseUnit } from '../columns/unit-words.ts';

/** A row above the data, and the line it stands on. */
export type HeaderRow = { readonly cells: readonly string[]; readonly line: number };

/**
 * The names among several header rows: the row above the data, unless another, or all of them joined (a group
 * above a name, as in Engine over Speed), says more that the dictionary knows.
 */
export function bestNames(rows: readonly HeaderRow[]): { cells: readonly string[]; line: number } {
  const last = rows.at(-1);
  if (!last) return { cells: [], line: 0 };
  if (rows.length === 1) return last;
  const width = Math.max(...rows.map((row) => row.cells.length));
  const filled = rows.map((row, i) => (i < rows.length - 1 ? filledForward(row.cells) : row.cells));
  const joined = (from: number) =>
    Array.from({ length: width }, (_, c) =>
      [...new Set(filled.slice(from).map((cells) => (cells[c] ?? '').trim()))]
        .filter((t) => t !== '')
        .join(' '),
    );
  const known = (cells: readonly string[]) =>
    new Set(cells.flatMap((c) => matchName(headerParts(c).name).slice(0, 1)).map((m) => m.quantity)).size;
  let best: { cells: readonly string[]; line: number } = last;
  let most = known(last.cells);
  const joints = rows.slice(0, -1).map((_, i) => ({ cells: joined(i), line: last.line }));
  // A row by itself before a joint that says no more: types or numbers below the names are no part of them.
  for (const candidate of [...rows.slice(0, -1), ...joints.reverse()]) {
    const count = known(candidate.cells);
    if (count > most) {
      best = candidate;
      most = count;
    }
  }
  return best;
}

/** A group's name stands over its first column only. */
function filledForward(cells: readonly string[]): string[] {
  let name = '';
  return cells.map((cell) => {
    if (cell.trim() !== '') name = cell;
    return name;
  });
}

/** Whether most filled cells of a row are units. */
export function isUnitsRow(cells: readonly string[]): boolean {
  const filled = cells.filter((c) => c.trim() !== '');
  const known = filled.filter((c) => parseUnit(c) !== null).length;
  return filled.length > 0 && known >= 0.6 * filled.length;
}

/** One name per column; empty ones are numbered, equal ones told apart by a number behind them. */
export function uniqueNames(cells: readonly string[], width: number): string[] {
  const seen = new Map<string, number>();
  return Array.from({ length: width }, (_, i) => {
    let name = (cells[i] ?? '').replace(/\s+/g, ' ').trim();
    if (i === 0) name = name.replace(/^(#|\/\/|%|;)\s*(?=\S)/, '');
    name = name.replace(/^'(.+)'$/, '$1');
    if (name === '') name = `Column ${i + 1}`;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  });
}
