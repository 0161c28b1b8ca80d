import type { Note } from '../../core/result/index.ts';
import type { EcuTable, HeldCell, SteppedTable, TableAxes } from '../../core/tables/index.ts';
import type { ScreenWords, Show } from '../../core/words/index.ts';
import { placeText } from './cell-text.ts';

type Words = { readonly show: Show; readonly note: (n: Note) => string };

/** The table that was stepped: how its axes are read, and their values. */
type Stepped = {
  readonly table: { readonly axes: TableAxes };
  readonly now: Pick<EcuTable, 'across' | 'down'>;
};

/** Cells that are named one by one; more are only counted (common practice). */
const namedCells = 3;
const cellsOnALine = 2;

function placesOf({ table, now }: Stepped, held: readonly HeldCell[], show: Show): string {
  const first = held.slice(0, namedCells).map(({ row, column }) => {
    const at = placeText(table.axes, now.across[column] ?? 0, now.down[row] ?? 0, show);
    return `${at.speed} ${at.load}`;
  });
  return [...first, ...(held.length > namedCells ? ['…'] : [])].join('; ');
}

/** A remark on a step; where it is on cells that were held, with their places. */
export function remarkText(
  remark: Note,
  held: readonly HeldCell[],
  of: Stepped,
  { show, note }: Words,
): string {
  const by =
    remark.code === 'tables/held-by-limit'
      ? 'limit'
      : remark.code === 'tables/held-by-neighbours'
        ? 'neighbours'
        : null;
  if (by === null) return note(remark);
  const places = placesOf(
    of,
    held.filter((h) => h.by === by),
    show,
  );
  return `${note(remark)} (${places})`;
}

/** What is told of a step by keys, short enough for a line: which cells were held and by what, or that none moved. */
export function remarksOfNudge(
  { notes, held, changes }: SteppedTable,
  of: Stepped,
  { show, note, screens }: Words & { readonly screens: ScreenWords },
): readonly string[] {
  const said = screens.tables.held;
  const told = (['limit', 'neighbours'] as const).flatMap((by) => {
    const cells = held.filter((h) => h.by === by);
    if (cells.length === 0) return [];
    const first = placesOf(of, cells.slice(0, cellsOnALine), show);
    const rest = cells.length - cellsOnALine;
    return [said[by](rest > 0 ? said.andMore(first, rest) : first, cells.length)];
  });
  if (told.length > 0 || changes.length > 0) return told;
  return notes
    .filter((n) => n.code === 'tables/nothing-changed' || n.code === 'tables/step-too-fine')
    .map(note);
}
