import { fail, type Note, ok, type Result } from '../result/index.ts';
import type { CellMask } from './coverage.ts';
import type { EcuTable } from './ecu-table.ts';
import { type CellChange, changesBetween, withValues } from './set-cells.ts';

export type StepQuestion = {
  readonly covered: CellMask;
  /** In the table's own unit; negative goes down. */
  readonly step: number;
  /** Cells over which the step fades out towards cells that are not covered; 0 for a hard edge. */
  readonly edge: number;
  /** No cell passes this on its way; null where there is none. */
  readonly limit: number | null;
  /**
   * What was last read or written down. Steps that pile up never part two neighbours by more than one step beyond what
   * they stood apart in it: no cliff grows at the edge. Left out, the table itself.
   */
  readonly since?: EcuTable;
  /** Most that two neighbours may differ, where they did not differ more before; null for any. */
  readonly neighbourLimit: number | null;
};

/** A cell that got less than it was to get, and what held it. */
export type HeldCell = {
  readonly row: number;
  readonly column: number;
  readonly by: 'limit' | 'neighbours';
};

export type SteppedTable = {
  readonly table: EcuTable;
  readonly changes: readonly CellChange[];
  readonly held: readonly HeldCell[];
  readonly notes: readonly Note[];
};

const around = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
] as const;

/** Steps to the nearest cell that is not covered, diagonals counted as one; the rim of the table is no edge. */
function depthOf(covered: CellMask): number[][] {
  const far = covered.length + (covered[0]?.length ?? 0);
  const depth = covered.map((line) => line.map((c) => (c ? far : 0)));
  for (let pass = 0; pass < far; pass++) {
    let moved = false;
    for (const [r, line] of depth.entries())
      for (const [c, value] of line.entries()) {
        let least = value;
        for (let dr = -1; dr <= 1; dr++)
          for (let dc = -1; dc <= 1; dc++) least = Math.min(least, (depth[r + dr]?.[c + dc] ?? far) + 1);
        if (least < value) {
          line[c] = least;
          moved = true;
        }
      }
    if (!moved) break;
  }
  return depth;
}

/**
 * Steps the covered cells, fading towards the uncovered ones, never past the limit, never further from a neighbour than
 * allowed. Cells that are not covered keep their value, and their text.
 *
 *   new = old + step min(1, depth / (edge + 1))
 *   |new_i - new_j| <= max(limit, |old_i - old_j|)
 *   new_i - new_j <= max(since_i - since_j + |step|, old_i - old_j)
 *
 * New values are rounded towards the old ones at the control's own digits, so that no rounding passes a limit.
 *
 * Errors: tables/step-not-number.
 */
export function stepCells(table: EcuTable, question: StepQuestion): Result<SteppedTable> {
  const { step, covered, limit, neighbourLimit } = question;
  if (!Number.isFinite(step) || step === 0) return fail({ code: 'tables/step-not-number', facts: { step } });
  const up = Math.sign(step);
  const old = table.values;
  const depth = depthOf(covered);
  const fade = Math.max(0, Math.round(question.edge)) + 1;
  const held: HeldCell[] = [];
  const wanted = old.map((line, r) =>
    line.map((value, c) => {
      const share = covered[r]?.[c] ? Math.min(1, (depth[r]?.[c] ?? 0) / fade) : 0;
      const asked = value + step * share;
      if (limit === null || share === 0 || up * (asked - limit) <= 0) return asked;
      held.push({ row: r, column: c, by: 'limit' });
      // A cell that stands past the limit already is left where it is.
      return up * (value - limit) >= 0 ? value : limit;
    }),
  );
  // From here on in whole digits of the control, so that no rounding passes a limit afterwards.
  const digits = 10 ** table.decimals;
  const inTicks = (of: readonly (readonly number[])[]) =>
    of.map((line) => line.map((value) => Math.round(value * digits)));
  const start = inTicks(old);
  const ticks = wanted.map((line, r) =>
    line.map((value, c) => {
      const from = old[r]?.[c] ?? value;
      // 1e-9: 0.3 / 0.1 must not lose a whole digit.
      return Math.round(from * digits) + up * Math.floor(up * (value - from) * digits + 1e-9);
    }),
  );
  const pulledBack = holdToNeighbours(ticks, {
    start,
    since: inTicks((question.since ?? table).values),
    up,
    // A step finer than the digits of the control moves nothing, so it may part nothing either.
    ramp: Math.floor(Math.abs(step) * digits + 1e-9),
    limit: neighbourLimit === null ? Number.POSITIVE_INFINITY : Math.floor(neighbourLimit * digits + 1e-9),
  });
  held.push(...pulledBack);
  const rounded = ticks.map((line, r) =>
    line.map((value, c) => (value === start[r]?.[c] ? (old[r]?.[c] ?? value) : value / digits)),
  );
  const after = withValues(table, rounded);
  const changes = changesBetween(table, after);
  // The cell that gets the largest share of the step tells what would move any.
  const share = Math.min(1, depth.reduce((most, line) => Math.max(most, ...line), 0) / fade);
  const isTooFine = share > 0 && Math.abs(step) * share * digits + 1e-9 < 1;
  const notes = notesOf(question, changes, held, isTooFine ? tooFine(share, table.decimals) : null);
  return ok({ table: after, changes, held, notes });
}

type Hold = {
  /** Before the step, and what was last written down. */
  readonly start: readonly (readonly number[])[];
  readonly since: readonly (readonly number[])[];
  readonly up: number;
  /** Most that the step may part two neighbours, beyond what they stood apart in `since`. */
  readonly ramp: number;
  /** Most that two neighbours may stand apart at all. */
  readonly limit: number;
};

/**
 * Pulls values back towards the old ones until no two neighbours stand further apart than allowed, or than they did
 * before. The old values always fit, so it comes to rest.
 */
function holdToNeighbours(ticks: number[][], { start, since, up, ramp, limit }: Hold): HeldCell[] {
  const before = ticks.map((line) => [...line]);
  for (let moved = true; moved; ) {
    moved = false;
    for (const [r, line] of ticks.entries())
      for (const [c, value] of line.entries())
        for (const [dr, dc] of around) {
          const other = ticks[r + dr]?.[c + dc];
          const [mine, theirs] = [start[r]?.[c], start[r + dr]?.[c + dc]];
          const [mineSince, theirsSince] = [since[r]?.[c], since[r + dr]?.[c + dc]];
          if (other === undefined || mine === undefined || theirs === undefined) continue;
          const gap = up * (mine - theirs);
          const gapSince = up * ((mineSince ?? mine) - (theirsSince ?? theirs));
          const held = other + up * Math.max(gap, Math.min(limit, gapSince + ramp));
          if (up * ((line[c] ?? value) - held) > 0) {
            line[c] = held;
            moved = true;
          }
        }
  }
  return ticks.flatMap((line, row) =>
    line.flatMap((value, column) =>
      value === before[row]?.[column] ? [] : [{ row, column, by: 'neighbours' as const }],
    ),
  );
}

/** That a step moves nothing because of the table's digits, and the least in whole digits that moves a cell. */
function tooFine(share: number, decimals: number): Note {
  const digits = 10 ** decimals;
  const least = Math.ceil(1 / share - 1e-9) / digits;
  return { code: 'tables/step-too-fine', facts: { digit: 1 / digits, least, decimals } };
}

function notesOf(
  question: StepQuestion,
  changes: readonly CellChange[],
  held: readonly HeldCell[],
  fine: Note | null,
): Note[] {
  const heldBy = (by: HeldCell['by']) => held.filter((h) => h.by === by).length;
  const heldByLimit = heldBy('limit');
  const heldByNeighbours = heldBy('neighbours');
  const notes: Note[] = [];
  if (!question.covered.some((line) => line.some(Boolean)))
    notes.push({ code: 'tables/nothing-covered', facts: {} });
  else if (fine) notes.push(fine);
  else if (changes.length === 0) notes.push({ code: 'tables/nothing-changed', facts: {} });
  else {
    const largest = changes.reduce((most, c) => Math.max(most, Math.abs(c.to - c.from)), 0);
    notes.push({ code: 'tables/stepped', facts: { cells: changes.length, largest } });
  }
  if (heldByLimit > 0 && question.limit !== null)
    notes.push({ code: 'tables/held-by-limit', facts: { cells: heldByLimit, limit: question.limit } });
  if (heldByNeighbours > 0)
    notes.push({
      code: 'tables/held-by-neighbours',
      facts: { cells: heldByNeighbours, limit: question.neighbourLimit, step: Math.abs(question.step) },
    });
  if (changes.length > 0) notes.push({ code: 'tables/check-before-writing', facts: {} });
  return notes;
}
