import type { Arrival } from '../delivery/index.ts';
import type { Note } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { arrivalOf, beforeKnock, emptyVolume } from './arrival.ts';
import {
  controllerSetting,
  curveOverBoost,
  curveOverPull,
  deliveredAt,
  type FeedCurve,
  type FeedRegion,
  feedRegions,
  misfeed,
  mostFeed,
  type SprayContext,
} from './feed-curve.ts';
import { practice } from './practice.ts';
import { speedAtBoost } from './pull-path.ts';
import { isWorthSaying } from './strategy-numbers.ts';
import {
  explainPoints,
  fullBeyond,
  laterStart,
  type SprayPoints,
  type StrategyName,
  settablePoints,
} from './strategy-points.ts';

/** One way to set start and full point, with what it does. */
export type Strategy = {
  readonly name: StrategyName;
  /** As worked out. */
  readonly asked: SprayPoints;
  /** As the controller takes it; everything below is worked out from these. */
  readonly start: number;
  readonly full: number;
  readonly overBoost: FeedCurve;
  readonly overPull: FeedCurve;
  readonly boostRegions: readonly FeedRegion[];
  readonly pullRegions: readonly FeedRegion[];
  /** When fluid first leaves the nozzle on the pull. */
  readonly atStart: { readonly fluidToFuel: number; readonly feed: number | null };
  readonly arrival: Arrival | null;
  /** Mean distance of delivered from needed over boost, as a share of the mean need. */
  readonly misfeed: number;
  /** Delivered over needed at peak boost. */
  readonly peakFeed: number;
  readonly notes: readonly Note[];
  readonly explanation: Explanation;
};

/** Works out everything that follows from one pair of points. */
export function strategyOf(
  context: SprayContext,
  name: StrategyName,
  asked: SprayPoints,
  because: readonly Note[] = [],
): Strategy {
  const { setup, path, need, fuel } = context;
  const { controller } = setup.fluidSystem;
  const limits = {
    step: controller.step_kPa === null ? null : controller.step_kPa * 1e3,
    highestStart: controller.highestStart_kPa === null ? null : controller.highestStart_kPa * 1e3,
    highestFull: controller.highestFull_kPa === null ? null : controller.highestFull_kPa * 1e3,
  };
  const notes: Note[] = [...because];
  if (asked.start >= path.peakBoost)
    notes.push({
      code: 'injection/start-above-peak',
      facts: { start: asked.start, peak: path.peakBoost },
    });
  let wanted = asked;
  const limit = setup.engine.knockLimitedBoost_kPa === null ? null : setup.engine.knockLimitedBoost_kPa * 1e3;
  if (limit !== null && limit < path.peakBoost && name !== 'by-hand') {
    const moved = beforeKnock(context, asked, limit);
    if (moved.points.start < asked.start)
      notes.push({
        code: 'injection/start-moved-for-knock',
        facts: { start: moved.points.start, was: asked.start, limit, delay: moved.arrival?.delay ?? 0 },
      });
    wanted = moved.points;
  }
  const points = settablePoints(wanted, limits);
  if (limits.highestStart !== null && wanted.start > limits.highestStart)
    notes.push({
      code: 'injection/controller-cannot',
      facts: { what: 'start', asked: wanted.start, most: limits.highestStart },
    });
  if (limits.highestFull !== null && wanted.full > limits.highestFull)
    notes.push({
      code: 'injection/controller-cannot',
      facts: { what: 'full', asked: wanted.full, most: limits.highestFull },
    });
  if (limits.step !== null && Math.abs(points.start - wanted.start) + Math.abs(points.full - wanted.full) > 1)
    notes.push({
      code: 'injection/rounded-to-step',
      facts: { start: points.start, full: points.full, step: limits.step },
    });

  const overBoost = curveOverBoost(context, points);
  const overPull = curveOverPull(context, points);
  const arrival = arrivalOf(context, points);
  const volume = emptyVolume(setup);
  if (arrival === null) notes.push({ code: 'injection/fluid-never-arrives', facts: { volume } });
  else if (volume > 0)
    notes.push({
      code: 'delivery/fluid-arrives-late',
      facts: { delay: arrival.delay, volume, boostThen: arrival.boost, boostAtStart: points.start },
    });
  if (limit !== null && (arrival === null || arrival.boost > limit))
    notes.push({
      code: 'injection/fluid-too-late',
      facts: { arrives: arrival?.boost ?? path.peakBoost, limit, delay: arrival?.delay ?? 0 },
    });

  // 1 % of peak past the moment: at the very start point a ramp is still at nothing.
  const first = Math.min(path.peakBoost, (arrival?.boost ?? points.start) + 0.01 * path.peakBoost);
  const speed = speedAtBoost(path, first);
  const flow = deliveredAt(context, points, speed, first);
  const neededThen = need.at(speed, first);
  const atStart = {
    fluidToFuel: (flow * context.system.density) / fuel.at(speed, first),
    feed: neededThen > 0 ? flow / neededThen : null,
  };
  notes.push({
    code: 'injection/start-at-once',
    facts: { fluidToFuel: atStart.fluidToFuel, feed: atStart.feed ?? 0 },
  });

  const boostRegions = feedRegions(overBoost);
  notes.push(...regionNotes(overBoost, boostRegions));
  const peakFeed = (overBoost.delivered[overBoost.delivered.length - 1] ?? 0) / need.fluid;
  if (peakFeed > 1 + practice.matchedWithin)
    notes.push({ code: 'injection/still-over-feeds', facts: { feed: peakFeed } });
  if (peakFeed < 1 - practice.matchedWithin)
    notes.push({ code: 'injection/under-fed-at-peak', facts: { feed: peakFeed } });

  if (name === 'full-beyond' && context.system.metering === 'pump-speed' && Math.abs(peakFeed - 1) > 0.05) {
    const met = fullMeetingNeed(context, points.start);
    if (met !== null) notes.push({ code: 'injection/full-meets-need', facts: { full: met, peakFeed } });
  }

  const full = context.system.point(context.nozzles, path.peakBoost, 1);
  const feed = full.ok ? full.value.flow / need.fluid : Number.NaN;
  const pressure = pressureAtPeak(context, points);
  if (full.ok && pressure !== undefined && pressure < practice.coarseBelow * full.value.pressureDifference)
    notes.push({
      code: 'injection/coarse-drops',
      facts: { pressureDifference: pressure, full: full.value.pressureDifference },
    });
  return {
    name,
    asked,
    start: points.start,
    full: points.full,
    overBoost,
    overPull,
    boostRegions,
    pullRegions: feedRegions(overPull),
    atStart,
    arrival,
    misfeed: misfeed(overBoost),
    peakFeed,
    notes,
    explanation: explainPoints(name, {
      feed,
      peakBoost: path.peakBoost,
      matchedStart: setup.targets.matchedStart_percent / 100,
      points,
    }),
  };
}

/** Full point at which a slowed pump brings peak boost its need; null where none does [Pa gauge]. */
function fullMeetingNeed(context: SprayContext, start: number): number | null {
  const { path, need } = context;
  const flow = (full: number) => deliveredAt(context, { start, full }, path.peakSpeed_rad_s, path.peakBoost);
  let [low, high] = [path.peakBoost, start + 10 * (path.peakBoost - start)];
  if (flow(low) < need.fluid || flow(high) > need.fluid) return null;
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (flow(middle) > need.fluid) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Where a strategy leaves too little in the mid-range, and where it brings too much. */
function regionNotes(curve: FeedCurve, regions: readonly FeedRegion[]): Note[] {
  const notes: Note[] = [];
  const peak = curve.boost.length - 1;
  for (const { kind, from, to } of regions) {
    if (!isWorthSaying({ overBoost: curve }, { from, to })) continue;
    const [low, high] = [curve.boost[from] ?? 0, curve.boost[to] ?? 0];
    if (kind === 'under' && to < peak) {
      let [missing, needed] = [0, 0];
      for (let i = from; i <= to; i++) {
        missing += (curve.need[i] ?? 0) - (curve.delivered[i] ?? 0);
        needed += curve.need[i] ?? 0;
      }
      notes.push({
        code: 'injection/mid-range-cost',
        facts: { from: low, to: high, shortfall: needed > 0 ? missing / needed : 0 },
      });
    }
    if (kind === 'over' && mostFeed(curve, from, to) > 0)
      notes.push({
        code: 'injection/over-fed',
        facts: { from: low, to: high, most: mostFeed(curve, from, to) },
      });
  }
  return notes;
}

/** The strategies open to this system, those of practice first, then the one by hand where it is set. */
export function strategiesOf(context: SprayContext, feed: number): readonly Strategy[] {
  const { setup, path, system } = context;
  const matched = setup.targets.matchedStart_percent / 100;
  const later = laterStart(feed, path.peakBoost, matched, system.metering);
  const list = [
    strategyOf(context, 'later-start', later, [
      {
        code: 'injection/same-mean-fluid',
        facts: { start: later.start, share: later.start / path.peakBoost, feed },
      },
    ]),
  ];
  // On or off has no ramp to stretch.
  if (system.metering !== 'on-off') {
    const beyond = fullBeyond(feed, path.peakBoost, matched);
    const because: Note[] =
      feed < 1 - practice.matchedWithin
        ? []
        : [{ code: 'injection/peak-need-met', facts: { start: beyond.start, full: beyond.full, feed } }];
    list.push(strategyOf(context, 'full-beyond', beyond, because));
  }
  const { start_kPa, full_kPa } = setup.targets;
  if (start_kPa !== null || full_kPa !== null)
    list.push(
      strategyOf(context, 'by-hand', {
        start: start_kPa === null ? later.start : start_kPa * 1e3,
        full: full_kPa === null ? later.full : full_kPa * 1e3,
      }),
    );
  return list;
}

/** Pressure difference across the nozzle at peak boost [Pa]. */
export function pressureAtPeak(context: SprayContext, points: SprayPoints): number | undefined {
  const { path } = context;
  const setting = controllerSetting(context, points, path.peakSpeed_rad_s, path.peakBoost);
  const point = context.system.point(context.nozzles, path.peakBoost, setting);
  return point.ok ? point.value.pressureDifference : undefined;
}
