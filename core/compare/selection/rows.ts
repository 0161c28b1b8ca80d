import { trustedBand } from '../band/common-band.ts';
import { type Grid, gridMean, powerOnGrid } from '../band/grid.ts';
import type { PullEvidence } from '../evidence/pull-evidence.ts';
import type { EntryPulls } from '../judge-input.ts';
import type { ChosenPull } from './choose-pulls.ts';
import { partedByTurns, turnsOf } from './same-gear.ts';

/** One pull with its power on the common grid. */
export type Row = {
  readonly pull: PullEvidence;
  readonly chosen: ChosenPull | null;
  /** Pulls of one group were driven in one go. */
  readonly group: string;
  /** Groups of one setup had everything set alike. */
  readonly setup: string;
  readonly power: Float64Array;
  /** Natural logarithm of the band mean [W]. */
  readonly level: number;
};

export const beforeSetup = '@before';
export const afterSetup = '@after';

/** Null where the pull does not cover the grid or shows no power on it. */
export function rowOf(
  grid: Grid,
  pull: PullEvidence,
  chosen: ChosenPull | null,
  group: string,
  setup: string,
): Row | null {
  const power = powerOnGrid(pull, grid);
  const level = Math.log(gridMean(power));
  return Number.isFinite(level) ? { pull, chosen, group, setup, power, level } : null;
}

/**
 * All pulls that can tell something on this grid: the two sides, and those of the session's other entries that
 * cover the band in the same gear. An entry that drove a side's setup again joins that side's setup, except
 * where the two sides are that setup and its repetition: then the repetition is what is judged.
 */
export function gatherRows(
  grid: Grid,
  sides: { readonly before: readonly ChosenPull[]; readonly after: readonly ChosenPull[] },
  session: readonly EntryPulls[],
): Row[] {
  const rows: Row[] = [];
  const add = (pull: PullEvidence, chosen: ChosenPull | null, group: string, setup: string) => {
    const row = rowOf(grid, pull, chosen, group, setup);
    if (row) rows.push(row);
  };
  for (const c of sides.before) add(c.pull, c, beforeSetup, beforeSetup);
  for (const c of sides.after) add(c.pull, c, afterSetup, afterSetup);
  const judged = new Set([...sides.before, ...sides.after].map((c) => c.pull.id));
  const rootOf = (entry: EntryPulls) => entry.repeats ?? entry.id;
  const rootOfSide = (side: readonly ChosenPull[]) => {
    const home = session.find((e) => e.pulls.some((p) => side.some((c) => c.pull.id === p.id)));
    return home ? rootOf(home) : null;
  };
  const before = rootOfSide(sides.before);
  const after = rootOfSide(sides.after);
  const first = sides.before[0]?.pull;
  const gear = first?.gear ?? null;
  for (const entry of session) {
    const root = rootOf(entry);
    const setup =
      before === after ? root : root === before ? beforeSetup : root === after ? afterSetup : root;
    if (entry.pulls.some((p) => judged.has(p.id))) continue;
    for (const pull of entry.pulls) {
      const isOtherGear = gear !== null && pull.gear !== null && pull.gear !== gear;
      if (!pull.isComplete || isOtherGear || !trustedBand(pull)) continue;
      if (first && partedByTurns(turnsOf([first, pull])).length > 1) continue;
      add(pull, null, entry.id, setup);
    }
  }
  return rows;
}
