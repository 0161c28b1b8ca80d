import { fail, type Note, ok, type Problem, type Result } from '../result/index.ts';
import { type FlowCorrection, type Metering, meteredPoint } from './metering.ts';
import type { DeliverySystem } from './operating-point.ts';
import { type Reading, type WeightedFit, weightedFit } from './weighted-fit.ts';

/** One run into a measuring bottle in the open. */
export type BucketPoint = {
  /** 0 to 1 */
  readonly setting: number;
  /** [s] */
  readonly time: number;
  /** Read, or weighed and divided by the density [m^3]. */
  readonly volume: number;
  /** Half of the 95 % interval of the volume [m^3]. */
  readonly volumeHalf: number;
  /** Half of the 95 % interval of the time [s]. */
  readonly timeHalf: number;
};

export type BucketFit = {
  readonly correction: FlowCorrection;
  /** Standard deviation of the points about the fit as a share of the flow; at least what the readings allow. */
  readonly scatter: number;
  readonly points: readonly {
    readonly setting: number;
    readonly measured: number;
    /** Standard uncertainty of `measured` [m^3/s]. */
    readonly uncertainty: number;
    readonly fitted: number;
    readonly isOff: boolean;
  }[];
  readonly notes: readonly Note[];
};

/** A point this many of its own standard uncertainties off the fit of the others is called off (common practice). */
const offAt = 3;

const predict = (fit: WeightedFit, x: readonly number[]) =>
  x.reduce((sum, value, k) => sum + value * (fit.coefficients[k] ?? 0), 0);

/**
 * Which column each reading has: the model's flow, times a factor; for a valve measured at three settings or
 * more, a line over the setting, as a valve passes nothing until it has opened.
 */
function withDeadSetting(metering: Metering, points: readonly BucketPoint[]): boolean {
  return metering === 'valve-duty' && new Set(points.map((p) => p.setting)).size >= 3;
}

function correctionOf(fit: WeightedFit): FlowCorrection {
  const [first = 1, slope] = fit.coefficients;
  if (slope === undefined) return { factor: first, deadSetting: 0 };
  // full (first + slope s) = factor full (s - dead) / (1 - dead)
  return { factor: first + slope, deadSetting: -first / slope };
}

/** Deleted residual of each point: how far the fit of all the others misses it, in standard uncertainties. */
function misses(readings: readonly Reading[]): number[] {
  return readings.map((reading, i) => {
    const fit = weightedFit(readings.filter((_, k) => k !== i));
    if (!fit) return 0;
    return (reading.y - predict(fit, reading.x)) / Math.hypot(reading.error, fit.errorAt(reading.x));
  });
}

/**
 * A bucket test against the model: it overrides the ratings.
 *
 *   q = factor q_model(s)                         on-off, pump speed, or fewer than three settings
 *   q = factor q_full (s - dead) / (1 - dead)     valve duty
 *
 * Weighted least squares. A point is off where the fit of all the others misses it by more than 3 of its own
 * standard uncertainties (a deleted residual: a bad point can't hide by pulling the fit to itself); it is named
 * and left out.
 *
 * @param system  with the nozzles in the open: back pressure is ambient
 *
 * Valid:  the settings tested and between them; three points or more name the odd one.
 * Errors: delivery/bucket-empty, delivery/bucket-not-measurable where a point brought nothing.
 * Source: JCGM 100:2008 for the uncertainties.
 * Check:  95.3, 95.7, 72 and 95.5 % of the model leave 0.955 and name the third.
 */
export function fitBucketTest(
  system: DeliverySystem,
  metering: Metering,
  points: readonly BucketPoint[],
): Result<BucketFit> {
  if (points.length === 0) return fail({ code: 'delivery/bucket-empty', facts: {} });
  const hasDead = withDeadSetting(metering, points);
  const full = meteredPoint(system, metering, 1);
  if (!full.ok) return full;
  const readings: Reading[] = [];
  const problems: Problem[] = [];
  for (const [i, p] of points.entries()) {
    const model = meteredPoint(system, metering, p.setting);
    if (!model.ok) return model;
    if (!(model.value.flow > 0 && p.volume > 0 && p.time > 0)) {
      problems.push({ code: 'delivery/bucket-not-measurable', facts: { point: i + 1, setting: p.setting } });
      continue;
    }
    const y = p.volume / p.time;
    // Halves of 95 % intervals, so half of each is a standard uncertainty.
    const share = Math.hypot(p.volumeHalf / p.volume, p.timeHalf / p.time) / 2;
    const x = hasDead ? [full.value.flow, full.value.flow * p.setting] : [model.value.flow];
    // 0.01 %: readings typed as exact must not weigh without bound.
    readings.push({ x, y, error: y * Math.max(share, 1e-4) });
  }
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);

  const missed = misses(readings);
  const size = (i: number) => Math.abs(missed[i] ?? 0);
  const worst = readings.reduce((a, _, i) => (size(i) > size(a) ? i : a), 0);
  // One odd point makes the others look off too, as it sits in their fits: only the worst is named.
  const nameable = readings.length >= (hasDead ? 4 : 3);
  const off = nameable && size(worst) > offAt ? worst : null;
  const kept = readings.filter((_, i) => i !== off);
  const fit = weightedFit(kept);
  // A line that opens before zero is scatter, not a valve: back to one factor.
  if (hasDead && (!fit || correctionOf(fit).deadSetting < 0)) {
    const plain = (r: Reading): Reading => ({ ...r, x: [r.x[1] ?? 0] });
    return finish(kept.map(plain), readings.map(plain), weightedFit(kept.map(plain)));
  }
  return finish(kept, readings, fit);

  function finish(
    used: readonly Reading[],
    all: readonly Reading[],
    fitted: WeightedFit | null,
  ): Result<BucketFit> {
    if (!fitted) return fail({ code: 'delivery/bucket-empty', facts: {} });
    const free = used.length - fitted.coefficients.length;
    const squares = used.reduce((sum, r) => sum + (r.y / predict(fitted, r.x) - 1) ** 2, 0);
    const readingShare = Math.max(...used.map((r) => r.error / r.y));
    const correction = correctionOf(fitted);
    const notes: Note[] = [
      { code: 'delivery/bucket-overrides', facts: { factor: correction.factor, points: used.length } },
    ];
    const offPoint = off === null ? undefined : all[off];
    if (off !== null && offPoint)
      notes.push({
        code: 'delivery/bucket-point-off',
        facts: {
          point: off + 1,
          measured: offPoint.y,
          fitted: predict(fitted, offPoint.x),
          times: size(off),
        },
      });
    if (!nameable && readings.length > 1 && size(worst) > offAt)
      notes.push({ code: 'delivery/bucket-points-disagree', facts: { times: size(worst) } });
    // 20 %: past what nozzle and pump spread explain together (common practice); something is wrong or mistyped.
    if (Math.abs(correction.factor - 1) > 0.2)
      notes.push({ code: 'delivery/bucket-far-from-rating', facts: { factor: correction.factor } });
    return ok({
      correction,
      scatter: Math.max(free > 0 ? Math.sqrt(squares / free) : 0, readingShare),
      points: all.map((r, i) => ({
        setting: points[i]?.setting ?? 0,
        measured: r.y,
        uncertainty: r.error,
        fitted: predict(fitted, r.x),
        isOff: i === off,
      })),
      notes,
    });
  }
}
