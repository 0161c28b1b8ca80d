import type { Note } from '../result/index.ts';
import { rpm } from '../units/index.ts';
import { evenly, interpolate } from './interpolate.ts';
import { practice } from './practice.ts';
import type { Setup } from './setup.ts';

/** A full-throttle pull as the plan sees it: one value per point, engine speed and time rising. */
export type PullPath = {
  readonly engineSpeed_rad_s: readonly number[];
  /** [Pa gauge] */
  readonly boost: readonly number[];
  /** From the start of the pull [s]. */
  readonly time: readonly number[];
  /** Engine speed of peak power, where the need is largest. */
  readonly peakSpeed_rad_s: number;
  readonly peakBoost: number;
  /** While the turbo spools [Pa/s]. */
  readonly boostRise: number;
  readonly notes: readonly Note[];
};

const points = 49;

/** How fast boost climbs between 20 and 90 % of its peak; infinite where it is there from the start. */
function riseOf(boost: readonly number[], time: readonly number[], peak: number): number {
  const reach = (share: number) => time[boost.findIndex((b) => b >= share * peak)] ?? 0;
  const took = reach(0.9) - reach(0.2);
  return took > 0 ? (0.7 * peak) / took : Infinity;
}

/**
 * The pull that a setup describes. A boost curve is scaled to the planned peak; without one, boost builds over
 * the first quarter of the speed range and then stays (common practice). Engine speed climbs evenly in time.
 *
 * @param peakBoost  [Pa gauge], above zero
 */
export function pullPath(setup: Setup, peakBoost: number): PullPath {
  const { engine } = setup;
  const notes: Note[] = [];
  const known = [...engine.boostCurve, ...engine.powerCurve].map((p) => rpm(p.engineSpeed_rpm));
  const from = engine.pullFrom_rpm === null ? Math.min(...known, Infinity) : rpm(engine.pullFrom_rpm);
  const to = engine.pullTo_rpm === null ? Math.max(...known, -Infinity) : rpm(engine.pullTo_rpm);
  const isKnown = Number.isFinite(from) && Number.isFinite(to) && to > from;
  const [low, high] = isKnown ? [from, to] : [practice.pullFrom, practice.pullTo];
  if (!isKnown)
    notes.push({ code: 'injection/practice-default', facts: { what: 'pullSpeeds', value: high } });

  const engineSpeed_rad_s = evenly(low, high, points);
  let boost: number[];
  if (engine.boostCurve.length >= 2) {
    const curve = [...engine.boostCurve].sort((a, b) => a.engineSpeed_rpm - b.engineSpeed_rpm);
    const most = Math.max(...curve.map((p) => p.boost_kPa * 1e3));
    const scale = most > 0 ? peakBoost / most : 0;
    const speeds = curve.map((p) => rpm(p.engineSpeed_rpm));
    const values = curve.map((p) => p.boost_kPa * 1e3 * scale);
    boost = engineSpeed_rad_s.map((n) => interpolate(speeds, values, n));
  } else {
    const full = low + practice.spoolShare * (high - low);
    boost = engineSpeed_rad_s.map((n) => peakBoost * Math.min(1, (n - low) / (full - low)));
    notes.push({ code: 'injection/practice-default', facts: { what: 'boostCurve', value: full } });
  }

  const duration = engine.pullDuration_s ?? practice.pullDuration;
  if (engine.pullDuration_s === null)
    notes.push({ code: 'injection/practice-default', facts: { what: 'pullDuration', value: duration } });
  const time = evenly(0, duration, points);

  let peakSpeed = engine.peakPower_rpm === null ? Number.NaN : rpm(engine.peakPower_rpm);
  if (!Number.isFinite(peakSpeed) && engine.powerCurve.length > 0) {
    const best = engine.powerCurve.reduce((a, b) => (b.power_kW > a.power_kW ? b : a));
    peakSpeed = rpm(best.engineSpeed_rpm);
  }
  if (!Number.isFinite(peakSpeed)) {
    // Fuel flow grows with speed, so the end of the pull is the cautious place to size a nozzle for.
    peakSpeed = high;
    notes.push({ code: 'injection/practice-default', facts: { what: 'peakSpeed', value: high } });
  }
  return {
    engineSpeed_rad_s,
    boost,
    time,
    peakSpeed_rad_s: peakSpeed,
    peakBoost,
    boostRise:
      engine.boostRise_kPa_s === null ? riseOf(boost, time, peakBoost) : engine.boostRise_kPa_s * 1e3,
    notes,
  };
}

/** Engine speed at which a pull first reaches a boost; the end of the pull where it never does. */
export function speedAtBoost(path: PullPath, boost: number): number {
  for (let i = 0; i < path.boost.length; i++) {
    const b1 = path.boost[i] ?? 0;
    if (b1 < boost) continue;
    const n1 = path.engineSpeed_rad_s[i] ?? 0;
    if (i === 0) return n1;
    const [b0, n0] = [path.boost[i - 1] ?? 0, path.engineSpeed_rad_s[i - 1] ?? 0];
    return n0 + ((n1 - n0) * (boost - b0)) / (b1 - b0);
  }
  return path.engineSpeed_rad_s[path.engineSpeed_rad_s.length - 1] ?? 0;
}
