import type { Plan, Setup } from '../injection/index.ts';
import { degrees } from '../units/index.ts';
import type { Today } from './charge-of-setup.ts';
import type { SparkTable } from './covered-cells.ts';
import type { LadderLimits } from './limits.ts';
import type { LadderPlace } from './routine.ts';
import type { LadderEntry } from './standing.ts';

export type LadderInput = {
  readonly setup: Setup;
  readonly limits: LadderLimits;
  /** What was driven so far, the baseline first; empty before the first pull. */
  readonly ledger: readonly LadderEntry[];
  readonly place: LadderPlace;
  /** The air of the pulls to come; the setup's air is that of the shown point. */
  readonly today?: Today;
  readonly sizes?: Partial<StepSizes>;
  /** Where there is one, a spark step names its cells. */
  readonly sparkTable?: SparkTable | null;
};

/** How big steps are; half of it near a limit. */
export type StepSizes = {
  /** [Pa] */
  readonly boost: number;
  readonly spark_rad: number;
  readonly lambda: number;
  /** Spark is not planned further than this over the baseline's. */
  readonly mostSpark_rad: number;
};

/** 0.1 bar and 1.0 degree, half near the limit (common practice); four degrees in all, as the last ones bring nothing. */
export const usualSizes: StepSizes = {
  boost: 10e3,
  spark_rad: degrees(1),
  lambda: 0.02,
  mostSpark_rad: degrees(4),
};

/** Boost of the baseline: measured, else the one shown without knock, else the target without its last step. */
export function startBoost(input: LadderInput, plan: Plan): number {
  const first = input.ledger.find((e) => e.kind === 'boost' && e.from !== null);
  if (first?.from) return first.from;
  const shown = input.setup.engine.soundBoost_kPa;
  if (shown !== null) return shown * 1e3;
  const baseline = input.ledger.find((e) => e.kind === 'baseline');
  return baseline?.measured.boost ?? Math.max(0, plan.path.peakBoost - usualSizes.boost);
}
