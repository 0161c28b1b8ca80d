import type { Log } from '../channel.ts';
import { indexAt } from '../speeds/speed-ratio.ts';

/** A gear shows in a ratio that keeps still for so long [s] within so much. */
const still_s = 0.5;
const stillWithin = 0.02;
/** Below it the engine may idle with the clutch open [rad/s], 1,250 rpm. */
const idle = 131;
/** Below it a speed in any unit is too coarse, in the unit assumed [m/s]. */
const crawling = 2;
/** Engine speed that changes by so much meanwhile is geared to the road. */
const rises = 0.05;
const mostSamples = 4000;

/** Engine speed over vehicle speed [rad/m] where it keeps still: in a gear, or by chance. */
export type SteadyRatios = {
  readonly all: Float64Array;
  /** Those at which engine speed changed meanwhile: in a gear for certain. */
  readonly rising: Float64Array;
};

export function steadyRatios(log: Log, engineSpeed: Float64Array, speed: Float64Array): SteadyRatios {
  const every = Math.max(1, Math.floor(log.time.length / mostSamples));
  const all: number[] = [];
  const rising: number[] = [];
  for (const { from, to } of log.segments)
    for (let i = from; i < to; i += every) {
      const later = indexAt(log.time, (log.time[i] as number) + still_s, i, to);
      if (later >= to) break;
      const w = engineSpeed[i] as number;
      const v = speed[i] as number;
      const w2 = engineSpeed[later] as number;
      const v2 = speed[later] as number;
      if (!(w > idle && w2 > idle && v > crawling && v2 > crawling)) continue;
      const ratio = w / v;
      if (!(Math.abs(w2 / v2 / ratio - 1) < stillWithin)) continue;
      all.push(ratio);
      if (Math.abs(w2 / w - 1) > rises) rising.push(ratio);
    }
  return { all: Float64Array.from(all), rising: Float64Array.from(rising) };
}

/** A tyre's radius and its slip are known to this; beyond it the gear is another. */
const common = 0.03;
const commonSteps = 6;
/** Scatter of one ratio about its gear once the common part is off. */
const within = 0.015;

/**
 * Which share of ratios lies on the gears of a box, all off by one small factor at most, and on how many gears.
 *
 * @param turns  crank turns per turn of the gearbox' output
 */
export function fitsOf(
  turns: Float64Array,
  gearRatios: readonly number[],
): { readonly share: number; readonly gears: number } {
  let best = 0;
  let gears = 0;
  for (let k = -commonSteps; k <= commonSteps; k++) {
    // Slip makes the engine run ahead by 1 % on the whole.
    const off = 1.01 * (1 + (common * k) / commonSteps);
    const counts = new Int32Array(gearRatios.length);
    let count = 0;
    for (let i = 0; i < turns.length; i++) {
      const t = (turns[i] as number) / off;
      const gear = gearRatios.findIndex((r) => Math.abs(t / r - 1) < within);
      if (gear < 0) continue;
      counts[gear] = (counts[gear] as number) + 1;
      count++;
    }
    if (count <= best) continue;
    best = count;
    gears = counts.filter((n) => n >= leastOfGear * count).length;
  }
  return { share: turns.length > 0 ? best / turns.length : 0, gears };
}

/** A gear was driven where so many of the samples are its own: fewer are a gear change or chance. */
const leastOfGear = 0.04;
