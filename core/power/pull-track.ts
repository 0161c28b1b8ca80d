import type { ForceAt } from './both-speeds.ts';
import type { Car } from './car.ts';
import { curveTable } from './curve-table.ts';
import type { FusedSpeed } from './fused-speed.ts';
import { loadAt, type RoadLoad } from './road-load.ts';
import type { SlopePoint } from './slope-estimate.ts';
import { systematicError } from './systematic-error.ts';

/** A pull at even instants. */
export type Track = {
  readonly time: Float64Array;
  /** Made to rise strictly, so that it can be read the other way round. */
  readonly engineSpeed: Float64Array;
  readonly points: readonly SlopePoint[];
};

/** The pull at even instants, closer than the smoother can tell apart. */
export function trackOf(fused: FusedSpeed, start: number, end: number, forceAt: ForceAt): Track {
  const { time, points } = curveTable(fused.estimator, start, end, Math.max(0.05, (end - start) / 100));
  const forces = points.map((p) => forceAt(p.value, p.slope));
  const peak = Math.max(...forces);
  const engineSpeed = Float64Array.from(points, (p, i) => {
    const share = peak > 0 ? Math.max(0, (forces[i] as number) / peak) : 0;
    return (p.value / fused.distance) * (1 + fused.slip * share);
  });
  for (let i = 1; i < engineSpeed.length; i++)
    engineSpeed[i] = Math.max(engineSpeed[i] as number, (engineSpeed[i - 1] as number) * (1 + 1e-12));
  return { time, engineSpeed, points };
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
  const n = track.points.length;
  const wheelPower = new Float64Array(n);
  const enginePower = new Float64Array(n);
  const wheelPowerError = new Float64Array(n);
  const systematic = new Float64Array(n);
  const engineInertia = car.engineInertia_kg_m2 ?? 0;
  track.points.forEach((p, i) => {
    const w = track.engineSpeed[i] as number;
    const force = mass * p.slope + loadAt(load, p.value);
    wheelPower[i] = force * p.value;
    enginePower[i] = (force * p.value) / efficiency + engineInertia * w * p.slope * (w / p.value);
    const byValue = force + p.value * (load.b + 2 * load.c * p.value);
    const bySlope = mass * p.value;
    const variance =
      byValue ** 2 * p.valueVariance + bySlope ** 2 * p.slopeVariance + 2 * byValue * bySlope * p.covariance;
    wheelPowerError[i] = Math.sqrt(Math.max(0, variance));
    systematic[i] = systematicError(car, load, scaleUncertainty, mass, p.value, p.slope);
  });
  return { wheelPower, enginePower, wheelPowerError, systematicError: systematic };
}

/** Reads curves that are known at rising xs at the points of the grid, by straight lines. */
export function readAt(xs: Float64Array, grid: Float64Array): (ys: Float64Array) => Float64Array {
  const places = Array.from(grid, (x) => {
    let i = 0;
    while (i < xs.length - 2 && (xs[i + 1] as number) < x) i++;
    const width = (xs[i + 1] as number) - (xs[i] as number);
    return { i, share: Math.min(1, Math.max(0, (x - (xs[i] as number)) / width)) };
  });
  return (ys) =>
    Float64Array.from(
      places,
      ({ i, share }) => (ys[i] as number) * (1 - share) + (ys[i + 1] as number) * share,
    );
}
