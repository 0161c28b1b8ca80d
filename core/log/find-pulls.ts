import type { Note } from '../result/index.ts';
import { boostOf } from './boost-of.ts';
import { boostSpans } from './boost-spans.ts';
import { type Channel, channelOf, type Log } from './channel.ts';
import { fullLevel, fullSpans } from './full-throttle.ts';
import { gearOf } from './gear-of.ts';
import { medianOf } from './median.ts';
import { type GearSpan, splitByGear } from './one-gear.ts';
import type { Pull } from './pull.ts';
import { pullFlags } from './pull-flags.ts';
import type { QuantityId } from './quantity.ts';
import { risingSpans } from './rising-spans.ts';
import { speedRatio, withoutSpikes } from './speed-ratio.ts';
import { spreadOf } from './spread.ts';
import { lineThrough } from './steady-rise.ts';
import { type EndedSpan, type Span, usualStep } from './time-axis.ts';

/** What the car tells about its gears; all may be unknown. */
export type PullOptions = {
  readonly gearRatios?: readonly number[];
  readonly finalDrive?: number | null;
  readonly rollingRadius_m?: number | null;
  readonly pullGear?: number | null;
};

export type FoundPulls = { readonly pulls: readonly Pull[]; readonly warnings: readonly Note[] };

/** Shorter full throttle is a stab, no pull (common practice). */
const shortest_s = 0.8;
/** Engine speed rises by so much at least, else it was a hill or a slipping clutch. */
const leastRise = 1.04;
const leastRise_rad_s = 20;
/** Faster than any car in gear climbs [rad/s2], 5,000 rpm per second (common practice). */
const fastestRise = 520;
/** A usable span: 800 rpm, and no petrol engine's pull ends below 4,300 rpm unless it was cut (common practice). */
const usableSpan_rad_s = 84;
const lowestEnd_rad_s = 450;

/** A car that pulls changes its speed by more than this. */
const leastMove_m_s = 2;

/** A pull before it is known how it compares with the others. */
type Draft = GearSpan & EndedSpan & { first: number; last: number; ratio: number };

/**
 * Full-throttle pulls in a log, each in one gear, in the order of the file.
 *
 * A pull starts with the first sample at full throttle and ends with the last before the lift. Full throttle is
 * told by the pedal, else the throttle, else boost and acceleration, else acceleration alone.
 *
 * @param options  the car's gears, so that a pull's gear can be named
 * @returns        pulls, aborted ones among them as not complete, and what is to be said of the whole log
 */
export function findPulls(log: Log, options: PullOptions = {}): FoundPulls {
  const logged = channelOf(log, 'engineSpeed');
  if (!logged) return { pulls: [], warnings: [{ code: 'log/no-engine-speed', facts: {} }] };
  const engine = { values: withoutSpikes(logged.values) };
  const road = movingSpeedOf(log);
  const ratio = road ? speedRatio(engine.values, road.values) : null;
  const found = fullThrottleOf(log, engine.values, ratio);
  const drafts: Draft[] = [];
  for (const span of found.spans) {
    for (const part of splitByGear(engine.values, ratio, log.time, span)) {
      const draft = draftOf(log, engine.values, ratio, part);
      if (!draft) continue;
      // A gear change within the span is seen by itself.
      const startWithin_s = part.from === span.from ? (span.startWithin_s ?? 0) : 0;
      const endWithin_s = part.to === span.to ? (span.endWithin_s ?? 0) : 0;
      drafts.push({ ...draft, startWithin_s, endWithin_s });
    }
  }
  const top = drafts.reduce((most, d) => Math.max(most, d.last), 0);
  const pulls = drafts.map((draft): Pull => {
    const { first, last, ratio: pullRatio } = draft;
    const complete = isComplete(draft, drafts, top);
    return {
      from: draft.from,
      to: draft.to,
      start_s: log.time[draft.from] ?? 0,
      end_s: log.time[draft.to - 1] ?? 0,
      gear: gearOf(log, draft, pullRatio, options),
      rpmFrom: (first * 30) / Math.PI,
      rpmTo: (last * 30) / Math.PI,
      complete,
      flags: pullFlags(log, draft, { isAborted: !complete, ratio }),
    };
  });
  const warnings: Note[] = [];
  if (pulls.length === 0) warnings.push({ code: 'log/no-pulls', facts: {} });
  else if (found.by !== 'pedal' && found.by !== 'throttle')
    warnings.push({ code: 'log/pulls-by', facts: { quantity: found.by } });
  return { pulls, warnings };
}

/** A speed channel that stands still, as on a dyno whose rollers the car's logger does not see, tells no gear. */
function movingSpeedOf(log: Log): Channel | null {
  for (const quantity of ['vehicleSpeed', 'gpsSpeed'] as const) {
    const channel = channelOf(log, quantity);
    const spread = channel && spreadOf(channel.values);
    if (channel && spread && spread.high - spread.low > leastMove_m_s) return channel;
  }
  return null;
}

/**
 * Spans at full throttle and what told them. Pedal before throttle, since a plate may close on the engine's own
 * account. A pedal that moves but never gets to its stop says that there was no full throttle.
 */
function fullThrottleOf(
  log: Log,
  engineSpeed: Float64Array,
  ratio: Float64Array | null,
): { spans: readonly EndedSpan[]; by: QuantityId } {
  let moves = false;
  for (const quantity of ['pedal', 'throttle'] as const) {
    const channel = channelOf(log, quantity);
    if (!channel) continue;
    const level = fullLevel(channel.values, usualStep(log.time) || 0.05);
    if (level) return { spans: fullSpans(channel.values, level, log.time, log.segments), by: quantity };
    moves ||= spreadOf(channel.values).max - spreadOf(channel.values).min > 0.1;
  }
  if (moves) return { spans: [], by: 'pedal' };
  const boost = boostOf(log)?.values ?? null;
  const byBoost = boost && boostSpans(boost, engineSpeed, log.time, log.segments);
  if (byBoost) return { spans: byBoost, by: 'boost' };
  const spans = risingSpans({ engineSpeed, ratio, boost, time: log.time, segments: log.segments });
  return { spans, by: 'engineSpeed' };
}

function draftOf(
  log: Log,
  engineSpeed: Float64Array,
  ratio: Float64Array | null,
  part: GearSpan,
): Draft | null {
  const duration = (log.time[part.to - 1] ?? 0) - (log.time[part.from] ?? 0);
  if (duration < shortest_s) return null;
  const first = speedAtEnd(engineSpeed, log.time, part, 'first');
  const last = speedAtEnd(engineSpeed, log.time, part, 'last');
  const rise = last - first;
  if (!(rise >= leastRise_rad_s && last >= leastRise * first)) return null;
  if (rise / duration > fastestRise) return null;
  return { ...part, first, last, ratio: ratio ? medianOf(ratio, part.from, part.to) : Number.NaN };
}

/** Engine speed at one end of a span: the level there of a line through its outermost 0.3 s, against noise. */
function speedAtEnd(values: Float64Array, time: Float64Array, span: Span, end: 'first' | 'last'): number {
  const edge = end === 'first' ? span.from : span.to - 1;
  const at = time[edge] ?? 0;
  let [from, to] = end === 'first' ? [edge, edge + 4] : [edge - 3, edge + 1];
  while (end === 'first' && to < span.to && (time[to] ?? 0) - at <= 0.3) to++;
  while (end === 'last' && from > span.from && at - (time[from - 1] ?? 0) <= 0.3) from--;
  return lineThrough(values, time, Math.max(span.from, from), Math.min(span.to, to), at).level;
}

/**
 * Whether a pull reached a usable span, by itself and beside the others of its gear.
 *
 * @param top  highest end of all
 */
function isComplete(draft: Draft, all: readonly Draft[], top: number): boolean {
  const rise = draft.last - draft.first;
  if (rise < usableSpan_rad_s || draft.last < lowestEnd_rad_s) return false;
  if (draft.last >= 0.85 * top) return true;
  const sameGear = all.filter((d) => !(Math.abs(d.ratio / draft.ratio - 1) > 0.08));
  const widest = sameGear.reduce((most, d) => Math.max(most, d.last - d.first), 0);
  return rise >= 0.65 * widest;
}
