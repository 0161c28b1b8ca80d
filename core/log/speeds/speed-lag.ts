import type { Span } from '../span.ts';
import {
  costOf,
  type EngineTable,
  earliest_s,
  engineTable,
  grid_s,
  halfOf,
  type LagSamples,
  latest_s,
  samplesAround,
  speedInGear,
} from './lag-cost.ts';

/** Longest time constant of a smoothed channel that is tried [s]. */
const longest_s = 1.1;
const lagStep_s = 0.05;
/** A wheel sensor on a bus is so late or early anyway [s]; what follows allows for that. */
const usual_s = 0.1;
/** What is less is as well told by the lag and slip of the pull itself [s]. */
const leastLag_s = 0.12;
const leastSmoothed_s = 0.15;
const usualLags_s = [0, 0.05, 0.1, -0.05, -0.1];
/** Improvement, in squared deviations of independent samples, below which no lag is believed. */
const leastGain = 12;

/** How vehicle speed comes late. */
export type SpeedLag = {
  /** [s]; 0 where no more than is usual */
  readonly lag: number;
  /** Not put off but smoothed, with the lag as time constant. */
  readonly isSmoothed: boolean;
};
const none: SpeedLag = { lag: 0, isSmoothed: false };

/**
 * By how much vehicle speed comes later than engine speed around a pull.
 *
 *   w(t - lag) / v(t) = (1 + s F / Fmax) / d      put off
 *   w smoothed by the lag / v(t) = ...            smoothed at first order
 *
 * In one gear the ratio of the two is constant but for slip. With a lag it drifts with acceleration and swings back
 * when the foot comes up. Each lag is tried; the one that leaves the ratio most even over the pull and the seconds
 * around it in the same gear is taken, where it is clearly better than none. Slip is fitted with it, held near what
 * tyres do, since under power it looks like a lag.
 *
 * @param engineSpeed  [rad/s]
 * @param speed        [m/s], as logged
 * @param pull         rows of the pull; the ones around it are looked at by this function
 * @param segment      rows in which the clock runs on
 *
 * Valid:  -0.25 to 1.2 s put off, 0.15 to 1 s smoothed, from a pull with some seconds before or after it in its gear.
 * Source: kinematics; linear slip as in power; Tukey's biweight (Beaton and Tukey, Technometrics 16 (1974) 147, from
 *         memory) against other gears.
 */
export function speedLag(
  time: Float64Array,
  engineSpeed: Float64Array,
  speed: Float64Array,
  pull: Span,
  segment: Span,
): SpeedLag {
  const samples = samplesAround(time, speed, pull, segment);
  if (samples.time.length < 5 || samples.pullTo - samples.pullFrom < 2) return none;
  const engine = engineTable(time, engineSpeed, segment, samples);
  if (!engine) return none;
  const costAt = (lag: number) => costOf(samples, engine, engine.value, lag);
  // What is left without a lag is all that one could gain: a good log is done with here.
  if (costAt(0) <= leastGain) return none;
  const inGear = speedInGear(engine, samples);
  if (isOnTime(samples, engine, inGear)) return none;
  const putOff = leastOf(earliest_s, lagStep_s, latest_s, costAt);
  const smoothed = leastOf(2 * lagStep_s, lagStep_s, longest_s, (constant) =>
    costOf(samples, engine, smooth(engine, inGear, constant), 0),
  );
  // At either end of what is tried it is something else.
  const isSmoothed = !smoothed.isEnd && (putOff.isEnd || smoothed.cost < putOff.cost);
  const best = isSmoothed ? smoothed : putOff;
  if (best.isEnd || Math.abs(best.lag) <= (isSmoothed ? leastSmoothed_s : leastLag_s)) return none;
  for (const lag of usualLags_s) if (!(costAt(lag) - best.cost > leastGain)) return none;
  return { lag: best.lag, isSmoothed };
}

/** Lags so far apart that any true one lies nearer to one of them than to none [s]. */
const spread_s = [0.2, 0.35, 0.55, 0.85, 1.15, -0.2];
const spreadConstants_s = [0.2, 0.35, 0.6, 0.95];

/**
 * Whether none of a few lags fits better than none: so it is in nearly every log, and trying all of them with all samples
 * costs half as much as a pull's power.
 */
function isOnTime(all: LagSamples, engine: EngineTable, inGear: Float64Array): boolean {
  const samples = all.time.length < 2 * leastHalf ? all : halfOf(all);
  const costAt = (lag: number) => costOf(samples, engine, engine.value, lag);
  const usual = Math.min(costAt(0), costAt(usual_s));
  return (
    spread_s.every((lag) => costAt(lag) >= usual) &&
    spreadConstants_s.every((c) => costOf(samples, engine, smooth(engine, inGear, c), 0) >= usual)
  );
}

/** Fewer samples are all looked at. */
const leastHalf = 20;

/** The least of costs along lags, at every second step, then between its neighbours by a parabola. */
function leastOf(from: number, step: number, to: number, cost: (lag: number) => number) {
  const last = Math.round((to - from) / step);
  const costs = new Float64Array(last + 1).fill(Number.NaN);
  const costAt = (k: number): number => {
    if (Number.isNaN(costs[k])) costs[k] = cost(from + k * step);
    return costs[k] as number;
  };
  let best = 0;
  for (let k = 0; k <= last; k += 2) if (costAt(k) < costAt(best)) best = k;
  for (const k of [best - 1, best + 1]) if (k > 0 && k < last && costAt(k) < costAt(best)) best = k;
  if (best === 0 || best === last) return { lag: from + best * step, cost: costAt(best), isEnd: true };
  const before = costAt(best - 1);
  const after = costAt(best + 1);
  const bend = before - 2 * costAt(best) + after;
  const shift = bend > 0 ? (0.5 * (before - after)) / bend : 0;
  return { lag: from + (best + shift) * step, cost: costAt(best), isEnd: false };
}

/** What a first-order filter makes of even values. */
function smooth({ value }: EngineTable, inGear: Float64Array, constant: number): Float64Array {
  const share = 1 - Math.exp(-grid_s / constant);
  const out = new Float64Array(value.length);
  let level = Number.NaN;
  for (let k = 0; k < out.length; k++) {
    const x = inGear[k] as number;
    if (Number.isNaN(level)) level = x;
    level += Number.isNaN(x) ? 0 : share * (x - level);
    // In another gear there is nothing to be compared.
    out[k] = x === value[k] ? level : Number.NaN;
  }
  return out;
}
