import { knockHeadroom } from '../charge/index.ts';
import { type Plan, type Setup, speedAtBoost } from '../injection/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import { degrees, type Explanation } from '../units/index.ts';
import type { ChargeModel } from './charge-of-setup.ts';
import type { Standing } from './standing.ts';

/** Low and high. */
export type Range = readonly [number, number];

/** Room to knock with spray on, from the point this engine has shown. */
export type LadderHeadroom = {
  /** Gauge [Pa]. */
  readonly shownBoost: number;
  readonly isKnockLimited: boolean;
  /** Over the shown boost at the shown spark [Pa]. */
  readonly boost: Range;
  /** Over the shown spark at the shown boost [rad]. */
  readonly spark_rad: Range;
  readonly notes: readonly Note[];
  readonly explanations: readonly Explanation[];
};

const less = (a: Range, b: Range): Range => [Math.min(a[0], b[0]), Math.min(a[1], b[1])];

/**
 * Headroom at the two speeds that decide: just past full boost, where knock comes first, and at peak power, where the
 * fluid is thinnest; the lower of both. What was driven since beats what was predicted.
 *
 * @param shown  charge on the day that the point was shown
 * @param now    charge of the day that is asked about
 * @returns      null where this engine has shown no point
 */
export function ladderHeadroom(
  setup: Setup,
  plan: Plan,
  shown: ChargeModel,
  now: ChargeModel,
  standing: Standing,
): Result<LadderHeadroom | null> {
  const { engine } = setup;
  const limited = engine.knockLimitedBoost_kPa;
  const base = standing.baseline?.measured ?? null;
  const quiet = base?.knockEvents === 0 ? base.boost : null;
  const shownBoost = limited !== null ? limited * 1e3 : (engine.soundBoost_kPa ?? Number.NaN) * 1e3;
  const boost = Number.isFinite(shownBoost) ? shownBoost : quiet;
  if (boost === null) return ok(null);
  const early = 1.1 * speedAtBoost(plan.path, 0.98 * plan.path.peakBoost);
  let room: LadderHeadroom | null = null;
  for (const engineSpeed_rad_s of [Math.min(early, plan.path.peakSpeed_rad_s), plan.path.peakSpeed_rad_s]) {
    const found = knockHeadroom({
      engine: now.engine,
      engineSpeed_rad_s,
      shown: {
        path: shown.path(boost, engineSpeed_rad_s, false),
        spark_rad: shown.spark_rad,
        boost,
        isKnockLimited: limited !== null,
      },
      asked: (pressure) => now.path(pressure - now.ambientPressure, engineSpeed_rad_s, true),
    });
    if (!found.ok) return found;
    const { value } = found;
    room = {
      shownBoost: boost,
      isKnockLimited: limited !== null,
      boost: room ? less(room.boost, value.boost) : value.boost,
      spark_rad: room ? less(room.spark_rad, value.spark_rad) : value.spark_rad,
      notes: value.notes,
      explanations: value.explanations,
    };
  }
  return ok(room && drivenBeats(room, standing));
}

/** What a tenth of a bar costs in spark where the sums give no slope: a degree (common practice). */
const usualSlope = degrees(1) / 10e3;

/** Spark that a pascal of boost costs. */
function slopeOf(room: LadderHeadroom, end: 0 | 1): number {
  const [spark, boost] = [room.spark_rad[end], room.boost[end]];
  return spark > 1e-3 && boost > 1e3 ? spark / boost : usualSlope;
}

/** What was driven since takes the place of what was predicted: quiet boost raises the low end, knock cuts the high. */
function drivenBeats(room: LadderHeadroom, standing: Standing): LadderHeadroom {
  const slope = slopeOf(room, 1);
  let [low, high] = room.boost;
  let [sparkLow, sparkHigh] = room.spark_rad;
  // Shown quiet on another day proves nothing of a hotter one: only raises what was not already negative.
  if (standing.soundBoost !== null && high > 0 && standing.soundBoost - room.shownBoost > low) {
    low = standing.soundBoost - room.shownBoost;
    sparkLow = Math.max(sparkLow, slope * low);
  }
  if (standing.knock) {
    const edge = standing.knock.boost + standing.knock.spark_rad / slope - room.shownBoost;
    if (edge < high) {
      high = edge;
      sparkHigh = slope * edge;
    }
  }
  return {
    ...room,
    boost: [Math.min(low, high), high],
    spark_rad: [Math.min(sparkLow, sparkHigh), sparkHigh],
  };
}

/**
 * Spark that is left at a boost and a spark already taken.
 *
 *   d = D (1 - db / B) - taken          D and B the headroom in spark and in boost
 *
 * Boost and spark draw on one room: what one takes the other lacks, in a straight line between.
 */
export function sparkLeft(room: LadderHeadroom, boost: number, taken_rad: number): Range {
  const at = (end: 0 | 1): number => {
    const rise = boost - room.shownBoost;
    return room.spark_rad[end] - rise * slopeOf(room, end) - taken_rad;
  };
  const [a, b] = [at(0), at(1)];
  return [Math.min(a, b), Math.max(a, b)];
}
