import type { Note } from '../result/index.ts';
import { degrees } from '../units/index.ts';
import type { BoostCap } from './caps.ts';
import { type LadderHeadroom, sparkLeft } from './headroom.ts';
import type { StepSizes } from './ladder-input.ts';
import type { Standing } from './standing.ts';
import type { StepBuilder } from './step-builder.ts';

/** An edge typed in kPa and one summed up in steps differ by less than this [Pa]. */
const roundOff = 10;
/** More steps than any car climbs: a step size that was typed far too small must come to an end. */
const mostSteps = 60;

/** Boost in steps up to the lowest cap, halves from the middle of the predicted room on. */
export function climb(
  builder: StepBuilder,
  caps: readonly BoostCap[],
  headroom: LadderHeadroom | null,
  standing: Standing,
  sizes: StepSizes,
): BoostCap {
  const top = caps[0];
  if (!top) throw new Error('the target is always a cap');
  // The edge is expected in the middle of the predicted room: whole steps up to it, halves past it.
  const edge = headroom ? headroom.shownBoost + (headroom.boost[0] + headroom.boost[1]) / 2 : standing.boost;
  const least = sizes.boost / 5;
  while (top.boost - builder.now.boost >= least) {
    const from = builder.now.boost;
    const wasKnock = standing.knock !== null;
    const isHalf = wasKnock || from + sizes.boost > edge + roundOff;
    const size = isHalf ? sizes.boost / 2 : sizes.boost;
    // A rest of less than a fifth of a step joins the last one.
    const to = top.boost - (from + size) < least ? top.boost : from + size;
    const reason: Note = wasKnock
      ? { code: 'ladder/half-after-knock', facts: { knocked: standing.knock?.boost ?? 0 } }
      : isHalf
        ? { code: 'ladder/half-near-edge', facts: { edge: Math.max(edge, 0) } }
        : { code: 'ladder/boost-first', facts: { size } };
    builder.boost(to, isHalf, reason);
    if (builder.steps.length > mostSteps) break;
  }
  return top;
}

/** Why boost goes no further. */
export function endNote(top: BoostCap): Note {
  return { code: 'ladder/boost-ends', facts: { boost: top.boost, end: top.end } };
}

/** Spark up to the predicted edge: whole steps up to its middle, halves up to its end. */
export function takeSpark(
  builder: StepBuilder,
  boost: number,
  headroom: LadderHeadroom | null,
  standing: Standing,
  sizes: StepSizes,
): Note[] {
  if (standing.sparkBringsLittle) return [{ code: 'ladder/spark-brings-little', facts: {} }];
  if (standing.knock && standing.knock.kind === 'spark')
    return [{ code: 'ladder/spark-knocked', facts: { spark: standing.knock.spark_rad } }];
  if (!headroom) return [];
  const at = Math.max(boost, standing.boost);
  const room = sparkLeft(headroom, at, 0);
  const most = Math.min(room[1], sizes.mostSpark_rad);
  // A step typed in degrees and room computed in radians: less than any control can be set to.
  const slack = degrees(0.02);
  if (most - builder.now.spark_rad < sizes.spark_rad / 2 - slack)
    return [{ code: 'ladder/no-spark-left', facts: { left: Math.max(0, room[1] - builder.now.spark_rad) } }];
  while (true) {
    const taken = builder.now.spark_rad;
    const isHalf = taken + sizes.spark_rad > (room[0] + room[1]) / 2 + slack;
    const more = isHalf ? sizes.spark_rad / 2 : sizes.spark_rad;
    if (taken + more > most + slack) break;
    builder.spark(more, isHalf, {
      code: isHalf ? 'ladder/spark-half' : 'ladder/spark-after-boost',
      facts: { left: Math.max(0, room[0] - taken), most: Math.max(0, room[1] - taken) },
    });
  }
  return [{ code: 'ladder/spark-ends', facts: { spark: builder.now.spark_rad } }];
}

/** A target as a control takes it, to a hundredth of lambda and never past what was found. */
export function settable(target: number, now: number): number {
  const hundredths = target > now ? Math.floor(100 * target + 1e-6) : Math.ceil(100 * target - 1e-6);
  return hundredths / 100;
}

/** Mixture last, in steps that can be looked at one by one. */
export function shiftMixture(
  builder: StepBuilder,
  target: number,
  best: number,
  standing: Standing,
  sizes: StepSizes,
): void {
  const count = Math.max(1, Math.round(Math.abs(target - standing.lambda) / sizes.lambda));
  for (let i = 1; i <= count; i++)
    builder.mixture(
      settable(standing.lambda + ((target - standing.lambda) * i) / count, standing.lambda),
      best,
    );
}
