import { readCell } from '../table/cell.ts';
import { findLayout } from '../table/layout.ts';
import { headSize } from '../table/settle-table.ts';
import { tokenise } from '../table/tokenise.ts';
import { valueTable } from '../table/value-per-row.ts';

type Sample = { readonly time: string; readonly at: number; readonly cells: Map<string, string> };

/**
 * Rows of cells of a table with one value of one channel a row, gathered into one row for each time; the first row holds
 * the names. A clock that starts anew begins its rows anew. None where each row is a sample already.
 */
export function rowsOfValues(text: string): string[][] {
  const head = text.slice(0, headSize);
  const whole = head.length < text.length ? head.slice(0, head.lastIndexOf('\n') + 1) : head;
  const layout = findLayout(whole);
  const found = layout && valueTable(layout, whole);
  if (!layout || !found) return [];
  const units = new Map<string, string>();
  const samples: Sample[] = [];
  let part = new Map<string, Sample>();
  const close = () => {
    // One by one: a part may be the whole log, and a call takes no million arguments.
    for (const sample of [...part.values()].sort((a, b) => a.at - b.at)) samples.push(sample);
    part = new Map();
  };
  for (const row of tokenise(text, layout.delimiter).slice(layout.firstDataLine - 1)) {
    const cell = (c: number) => (row[c] ?? '').trim();
    const [time, name] = [cell(found.time), cell(found.name)];
    if (time === '' || name === '') continue;
    if (!units.has(name)) units.set(name, found.unit === null ? '' : cell(found.unit));
    if (part.get(time)?.cells.has(name)) close();
    const sample = part.get(time) ?? { time, at: readCell(time, layout.decimal).value, cells: new Map() };
    sample.cells.set(name, cell(found.value));
    part.set(time, sample);
  }
  close();
  const names = [...units.keys()];
  const headings = names.map((name) => (units.get(name) ? `${name} (${units.get(name)})` : name));
  return [
    [layout.names[found.time] ?? '', ...headings],
    ...samples.map(({ time, cells }) => [time, ...names.map((name) => cells.get(name) ?? '')]),
  ];
}
