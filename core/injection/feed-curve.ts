import type { FuelModel } from './engine-fuel.ts';
import type { FluidSystemModel, NozzleGroup } from './fluid-system.ts';
import { evenly } from './interpolate.ts';
import type { Need } from './need.ts';
import { practice } from './practice.ts';
import type { PullPath } from './pull-path.ts';
import type { Setup } from './setup.ts';
import type { SprayPoints } from './strategy-points.ts';

/** Delivered against needed: under-fed, right, over-fed; `none` where neither is asked nor given. */
export type FeedKind = 'none' | 'under' | 'right' | 'over';

/** One value per point along one axis. Flows in m^3/s. */
export type FeedCurve = {
  readonly engineSpeed_rad_s: readonly number[];
  readonly boost: readonly number[];
  readonly need: readonly number[];
  readonly delivered: readonly number[];
  /** Delivered over needed; null where nothing is needed. */
  readonly feed: readonly (number | null)[];
  readonly kind: readonly FeedKind[];
};

/** A stretch of one kind, as indices, both ends in. */
export type FeedRegion = { readonly kind: FeedKind; readonly from: number; readonly to: number };

/** All that one spray setting is worked out from. */
export type SprayContext = {
  readonly setup: Setup;
  readonly system: FluidSystemModel;
  readonly fuel: FuelModel;
  readonly need: Need;
  readonly path: PullPath;
  /** In question. */
  readonly nozzles: NozzleGroup;
};

/**
 * What the controller meters by. Injector duty and mass air both go with fuel flow at constant lambda, so one
 * signal stands for both; its start and full values are those of the start and full boost at peak-power speed.
 */
function signalOf(context: SprayContext, engineSpeed_rad_s: number, boost: number): number {
  return context.setup.fluidSystem.input === 'boost' ? boost : context.fuel.at(engineSpeed_rad_s, boost);
}

/** Controller output at a state of the engine, 0 to 1. */
export function controllerSetting(
  context: SprayContext,
  points: SprayPoints,
  engineSpeed_rad_s: number,
  boost: number,
): number {
  const at = (b: number) => signalOf(context, context.path.peakSpeed_rad_s, b);
  const [start, full] = [at(points.start), at(points.full)];
  const signal = signalOf(context, engineSpeed_rad_s, boost);
  if (signal < start) return 0;
  if (context.system.metering === 'on-off' || full <= start) return 1;
  const lowest = context.setup.fluidSystem.controller.lowest_percent / 100;
  return lowest + (1 - lowest) * Math.min(1, (signal - start) / (full - start));
}

/** Flow at a state of the engine [m^3/s]; 0 where the pump does not open the valve. */
export function deliveredAt(
  context: SprayContext,
  points: SprayPoints,
  engineSpeed_rad_s: number,
  boost: number,
): number {
  const setting = controllerSetting(context, points, engineSpeed_rad_s, boost);
  if (setting <= 0) return 0;
  const point = context.system.point(context.nozzles, boost, setting);
  return point.ok ? point.value.flow : 0;
}

function kindOf(need: number, delivered: number, peakNeed: number): FeedKind {
  // 2 % of peak need: less than that is neither missed nor too much, and its ratio would be noise.
  const little = 0.02 * peakNeed;
  if (need < little) return delivered < little ? 'none' : delivered - need > 5 * little ? 'over' : 'right';
  const feed = delivered / need;
  if (feed < 1 - practice.matchedWithin) return 'under';
  return feed > 1 + practice.matchedWithin ? 'over' : 'right';
}

function curveOver(
  context: SprayContext,
  points: SprayPoints,
  states: readonly { readonly speed: number; readonly boost: number }[],
): FeedCurve {
  const need = states.map((s) => context.need.at(s.speed, s.boost));
  const delivered = states.map((s) => deliveredAt(context, points, s.speed, s.boost));
  return {
    engineSpeed_rad_s: states.map((s) => s.speed),
    boost: states.map((s) => s.boost),
    need,
    delivered,
    feed: need.map((n, i) => (n > 0 ? (delivered[i] ?? 0) / n : null)),
    kind: need.map((n, i) => kindOf(n, delivered[i] ?? 0, context.need.fluid)),
  };
}

/** Over boost from nothing to peak, all at the engine speed of peak power: where the need is largest. */
export function curveOverBoost(context: SprayContext, points: SprayPoints, count = 41): FeedCurve {
  const { peakSpeed_rad_s, peakBoost } = context.path;
  return curveOver(
    context,
    points,
    evenly(0, peakBoost, count).map((boost) => ({ speed: peakSpeed_rad_s, boost })),
  );
}

/** Along the pull: boost and engine speed as they come together. */
export function curveOverPull(context: SprayContext, points: SprayPoints): FeedCurve {
  const { engineSpeed_rad_s, boost } = context.path;
  return curveOver(
    context,
    points,
    engineSpeed_rad_s.map((speed, i) => ({ speed, boost: boost[i] ?? 0 })),
  );
}

/** Rows over engine speed, columns over boost: what kind of feed each state of the engine gets. */
export type FeedMap = {
  readonly engineSpeed_rad_s: readonly number[];
  readonly boost: readonly number[];
  readonly kind: readonly (readonly FeedKind[])[];
  readonly feed: readonly (readonly (number | null)[])[];
};

export function feedMap(context: SprayContext, points: SprayPoints, rows = 13, columns = 17): FeedMap {
  const { path } = context;
  const speeds = evenly(
    path.engineSpeed_rad_s[0] ?? 0,
    path.engineSpeed_rad_s[path.engineSpeed_rad_s.length - 1] ?? 0,
    rows,
  );
  const boost = evenly(0, path.peakBoost, columns);
  // Metered by boost, flow is the same at every speed: solved once a column.
  const shared =
    context.setup.fluidSystem.input === 'boost' ? boost.map((b) => deliveredAt(context, points, 0, b)) : null;
  const kind: FeedKind[][] = [];
  const feed: (number | null)[][] = [];
  for (const speed of speeds) {
    const needs = boost.map((b) => context.need.at(speed, b));
    const given = boost.map((b, i) => shared?.[i] ?? deliveredAt(context, points, speed, b));
    kind.push(needs.map((n, i) => kindOf(n, given[i] ?? 0, context.need.fluid)));
    feed.push(needs.map((n, i) => (n > 0 ? (given[i] ?? 0) / n : null)));
  }
  return { engineSpeed_rad_s: speeds, boost, kind, feed };
}

/** Neighbours of one kind joined. */
export function feedRegions(curve: FeedCurve): readonly FeedRegion[] {
  const regions: { kind: FeedKind; from: number; to: number }[] = [];
  for (const [i, kind] of curve.kind.entries()) {
    const last = regions[regions.length - 1];
    if (last && last.kind === kind) last.to = i;
    else regions.push({ kind, from: i, to: i });
  }
  return regions;
}

/**
 * Largest delivered over needed on a stretch, where at least a tenth of the largest need is needed: at the foot of
 * a ramp the ratio of two trickles runs away and says nothing.
 */
export function mostFeed(curve: FeedCurve, from: number, to: number): number {
  const worth = 0.1 * Math.max(...curve.need);
  let most = 0;
  for (let i = from; i <= to; i++)
    if ((curve.need[i] ?? 0) >= worth) most = Math.max(most, curve.feed[i] ?? 0);
  return most;
}

/** Mean distance of delivered from needed over boost, as a share of the mean need. */
export function misfeed(curve: FeedCurve): number {
  let off = 0;
  let need = 0;
  for (const [i, n] of curve.need.entries()) {
    off += Math.abs((curve.delivered[i] ?? 0) - n);
    need += n;
  }
  return need > 0 ? off / need : 0;
}
