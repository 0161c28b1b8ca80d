import { rangeWithin } from '../log/index.ts';
import type { Car } from './car/car.ts';
import { loadAt, type RoadLoad } from './road-load.ts';
import { curveTable } from './smoothing/curve-table.ts';
import type { SlopeCurve, SlopeErrors } from './smoothing/slope-estimate.ts';
import { type ForceAt, forcesAlong } from './speed/both-speeds.ts';
import type { FusedSpeed } from './speed/fused-speed.ts';
import { systematicError } from './systematic-error.ts';

/** A pull at even instants. */
export type Track = {
  readonly time: Float64Array;
  /** Made to rise strictly, so that it can be read the other way round. */
  readonly engineSpeed: Float64Array;
  readonly curve: SlopeCurve & SlopeErrors;
};

/** The pull at even instants, closer than the smoother can tell apart. */
export function trackOf(fused: FusedSpeed, start: number, end: number, forceAt: ForceAt): Track {
  // Instants closer than the cells of the spline: nothing is left out between two.
  const { time, curve } = curveTable(
    fused.estimator.withErrors,
    start,
    end,
    Math.min(0.05, (end - start) / 100),
  );
  const { value } = curve;
  const forces = forcesAlong(curve, forceAt);
  const peak = rangeWithin(forces, 0, forces.length).high;
  const engineSpeed = new Float64Array(time.length);
  let least = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < engineSpeed.length; i++) {
    const share = peak > 0 ? Math.max(0, (forces[i] as number) / peak) : 0;
    const byRoad = ((value[i] as number) / fused.distance) * (1 + fused.slip * share);
    const read = fused.engineAt ? fused.engineAt(time[i] as number) : byRoad;
    engineSpeed[i] = Math.max(read, least);
    least = (engineSpeed[i] as number) * (1 + 1e-12);
  }
  return { time, engineSpeed, curve };
}

/** Powers and their errors at each instant of the track [W]. */
export function powersAlong(
  track: Track,
  car: Car,
  load: RoadLoad,
  mass: number,
  efficiency: number,
  scaleUncertainty: number,
) {
  const { value, slope, valueVariance, slopeVariance, covariance } = track.curve;
  const n = value.length;
  const wheelPower = new Float64Array(n);
  const enginePower = new Float64Array(n);
  const wheelPowerError = new Float64Array(n);
  const systematic = new Float64Array(n);
  const engineInertia = car.engineInertia_kg_m2 ?? 0;
  for (let i = 0; i < n; i++) {
    const v = value[i] as number;
    const a = slope[i] as number;
    const w = track.engineSpeed[i] as number;
    const force = mass * a + loadAt(load, v);
    wheelPower[i] = force * v;
    enginePower[i] = (force * v) / efficiency + engineInertia * w * a * (w / v);
    const byValue = force + v * (load.b + 2 * load.c * v);
    const bySlope = mass * v;
    const variance =
      byValue * byValue * (valueVariance[i] as number) +
      bySlope * bySlope * (slopeVariance[i] as number) +
      2 * byValue * bySlope * (covariance[i] as number);
    wheelPowerError[i] = Math.sqrt(Math.max(0, variance));
    systematic[i] = systematicError(car, load, scaleUncertainty, mass, v, a);
  }
  return { wheelPower, enginePower, wheelPowerError, systematicError: systematic };
}

/** Reads curves that are known at rising xs at the rising points of the grid, by straight lines. */
export function readAt(xs: Float64Array, grid: Float64Array): (ys: Float64Array) => Float64Array {
  const places = new Int32Array(grid.length);
  const shares = new Float64Array(grid.length);
  let i = 0;
  for (let k = 0; k < grid.length; k++) {
    const x = grid[k] as number;
    while (i < xs.length - 2 && (xs[i + 1] as number) < x) i++;
    const width = (xs[i + 1] as number) - (xs[i] as number);
    places[k] = i;
    shares[k] = Math.min(1, Math.max(0, (x - (xs[i] as number)) / width));
  }
  return (ys) => {
    const out = new Float64Array(grid.length);
    for (let k = 0; k < out.length; k++) {
      const at = places[k] as number;
      const share = shares[k] as number;
      out[k] = (ys[at] as number) * (1 - share) + (ys[at + 1] as number) * share;
    }
    return out;
  };
}
