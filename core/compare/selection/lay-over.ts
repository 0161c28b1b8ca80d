import type { Note } from '../../result/index.ts';
import { narrowestBand_rad_s, sharedBand, spooledBand } from '../band/common-band.ts';
import { type Grid, gridOver } from '../band/grid.ts';
import type { JudgeInput } from '../judge-input.ts';
import type { Side } from '../notes.ts';
import { type ChosenPull, choosePulls, factsOf } from './choose-pulls.ts';
import { leaveOutOdd } from './leave-out-odd.ts';
import { afterSetup, beforeSetup, gatherRows, type Row } from './rows.ts';

/** Both sides on one grid, with what else the session has on it. */
export type LaidOver = {
  readonly grid: Grid;
  /** Those of the two sides, and those of other entries for their scatter. */
  readonly rows: readonly Row[];
  readonly before: readonly Row[];
  readonly after: readonly Row[];
};

export type Layout = {
  /** Null where a side has nothing left or the sides share no band; the reasons say which. */
  readonly laid: LaidOver | null;
  readonly counts: Readonly<Record<Side, number>>;
  readonly reasons: readonly Note[];
  readonly remarks: readonly Note[];
};

/** The pulls that count, on the engine speeds that all of them cover. */
export function layOver(input: Pick<JudgeInput, 'before' | 'after' | 'session' | 'band_rad_s'>): Layout {
  const choice = choosePulls(input);
  const apart = (reasons: readonly Note[], remarks: readonly Note[], counts: Layout['counts']): Layout => ({
    laid: null,
    counts,
    reasons: [...choice.reasons, ...reasons],
    remarks,
  });
  const chosen = { before: choice.before.length, after: choice.after.length };
  const missing = emptySides(choice);
  if (missing.length > 0) return apart(missing, choice.leftOut, chosen);
  const common = sharedBand([...choice.before, ...choice.after].map((c) => c.band));
  const asked = input.band_rad_s ?? null;
  const chosenPulls = [...choice.before, ...choice.after].map((c) => c.pull);
  const band = common && (asked ? cut(asked, common) : spooledBand(common, chosenPulls));
  if (!band) return apart([{ code: 'compare/no-common-band', facts: {} }], choice.leftOut, chosen);
  const grid = gridOver(band);
  const gathered = gatherRows(grid, choice, input.session ?? []);
  const holes = [...choice.before, ...choice.after]
    .filter((c) => !gathered.some((r) => r.chosen === c))
    .map((c): Note => ({ code: 'compare/left-out-no-power', facts: factsOf(c) }));
  const { rows, leftOut } = leaveOutOdd(gathered);
  const before = rows.filter((r) => r.group === beforeSetup);
  const after = rows.filter((r) => r.group === afterSetup);
  const remarks = [...choice.leftOut, ...holes, ...leftOut, ...bandRemarks(asked, band, common)];
  const counts = { before: before.length, after: after.length };
  const emptied = emptySides({ before, after });
  if (emptied.length > 0) return apart(emptied, remarks, counts);
  return { laid: { grid, rows, before, after }, counts, reasons: choice.reasons, remarks };
}

/** The pulls of some rows of the two sides. */
export function chosenOf(rows: readonly Row[]): ChosenPull[] {
  return rows.flatMap((r) => r.chosen ?? []);
}

function emptySides(sides: Readonly<Record<Side, readonly unknown[]>>): Note[] {
  return (['before', 'after'] as const)
    .filter((side) => sides[side].length === 0)
    .map((side) => ({ code: 'compare/no-pulls', facts: { side } }));
}

function cut(
  asked: readonly [number, number],
  common: readonly [number, number],
): readonly [number, number] | null {
  const low = Math.max(asked[0], common[0]);
  const high = Math.min(asked[1], common[1]);
  return high - low >= narrowestBand_rad_s / 2 ? [low, high] : null;
}

function bandRemarks(
  asked: readonly [number, number] | null,
  used: readonly [number, number],
  common: readonly [number, number] | null,
): Note[] {
  if (!asked && common && used[0] > common[0]) {
    return [{ code: 'compare/from-spooled', facts: { from: used[0], covered: common[0] } }];
  }
  const isCut = asked && (used[0] - asked[0] > 1 || asked[1] - used[1] > 1);
  return isCut ? [{ code: 'compare/band-cut', facts: { asked, used } }] : [];
}
