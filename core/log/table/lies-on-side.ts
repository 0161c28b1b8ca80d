import { headerParts } from '../columns/header-unit.ts';
import { matchName } from '../columns/name-match.ts';
import { type Cell, readCell } from './cell.ts';
import type { Layout } from './layout.ts';
import { tokenise } from './tokenise.ts';

/** More channels than rows of a text are looked at never lie on their side. */
const linesLookedAt = 400;
/** Names that the dictionary has to know, and samples that have to stand along a row. */
const fewestNames = 2;
const fewestSamples = 4;

const isValue: ReadonlySet<Cell['kind']> = new Set(['number', 'clock', 'stamp', 'missing']);

/** Channels and samples of a table that lies on its side. */
export type SideTable = { readonly channels: number; readonly samples: number };

/**
 * Whether each row is a channel, its name in front and its samples along it; null where each row is a sample.
 *
 * @param text  the first lines of the file
 */
export function sideTable(layout: Layout, text: string): SideTable | null {
  if (layout.cellKinds[0] !== 'text' || layout.columns <= fewestSamples) return null;
  const lines = text
    .split(/\r\n?|\n/)
    .slice(layout.firstDataLine - 1, layout.firstDataLine - 1 + linesLookedAt)
    .filter((line) => line.trim() !== '');
  const names = new Set<string>();
  const known = new Set<string>();
  for (const line of lines) {
    const cells = tokenise(line, layout.delimiter)[0] ?? [];
    const [name = '', ...samples] = cells.map((cell) => cell.trim());
    const numbers = samples.filter((cell) => isValue.has(readCell(cell, layout.decimal).kind)).length;
    // A unit may stand between name and samples.
    if (name === '' || names.has(name) || numbers < samples.length / 2) return null;
    if (readCell(name, layout.decimal).kind !== 'text') return null;
    names.add(name);
    const meant = matchName(headerParts(name).name)[0];
    if (meant) known.add(meant.quantity);
  }
  const isSide = known.size >= fewestNames && known.size >= names.size / 3;
  return isSide ? { channels: names.size, samples: layout.columns - 1 } : null;
}
