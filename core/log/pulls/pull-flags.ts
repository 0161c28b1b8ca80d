import type { Note } from '../../result/index.ts';
import { degrees } from '../../units/index.ts';
import { boostOf } from '../boost-of.ts';
import { channelOf, type Log } from '../channel.ts';
import { medianOf } from '../median.ts';
import { rangeWithin } from '../range-within.ts';
import { wideOpen } from '../rises/boost-spans.ts';
import type { EndedSpan, Span } from '../span.ts';
import { medianOfThree } from '../speeds/speed-ratio.ts';
import { countedOnAt } from '../time/own-clock.ts';
import { levelAtTop } from './levels-off.ts';
import { bouncesAtTop } from './limiter-bounce.ts';
import { isLimiterAt } from './limiter-plate.ts';
import type { GearSpan } from './one-gear.ts';
import { sparkDip } from './spark-dip.ts';

/** Retard of one degree is evidence (common practice: smaller figures are a controller's own dither). */
const leastRetard_rad = degrees(1);
/** Engine speed ahead of the road by this share beyond the pull's own mean is spin (common practice). */
const leastSpin = 0.06;
/** A plate that shuts this far below its own wide-open reading while the pedal is down was shut for a reason. */
const leastClosing = 0.2;

/** What an end is held to where the pedal is logged [s]. */
const certain_s = 0.15;

/** What is to be said of one pull. */
export function pullFlags(
  log: Log,
  pull: GearSpan & EndedSpan & { readonly last: number; readonly ratio: number },
  known: {
    readonly isAborted: boolean;
    readonly ratio: Float64Array | null;
    /** As logged or computed [rad/s]; null where nobody knows. */
    readonly engine: Float64Array | null;
  },
): Note[] {
  const flags: Note[] = [];
  const timeAt = (i: number) => ownTimeAt(log, i);
  if (known.isAborted)
    flags.push({ code: 'log/pull-aborted', facts: { rpmTo_rad_s: known.engine ? pull.last : null } });
  if (pull.afterChange) flags.push({ code: 'log/pull-gear-change', facts: { time_s: timeAt(pull.from) } });
  if (pull.beforeChange) flags.push({ code: 'log/pull-gear-change', facts: { time_s: timeAt(pull.to - 1) } });
  const spin = known.ratio && spinIn(log, known.ratio, pull, pull.ratio);
  if (spin) flags.push(spin);
  else {
    const fall = pull.breaks.find((b) => b.kind === 'spin');
    if (fall) flags.push({ code: 'log/pull-wheel-spin', facts: { time_s: timeAt(fall.from), excess: null } });
  }
  const short = torqueShortAt(log, pull);
  const limiter = limiterOf(log, pull, known.engine, short);
  if (limiter !== null) flags.push({ code: 'log/pull-limiter', facts: { engineSpeed_rad_s: limiter } });
  const intervention = interventionIn(log, pull, short);
  if (intervention) flags.push(intervention);
  const knock = knockIn(log, pull);
  if (knock) flags.push(knock);
  const gap = gapIn(log, pull);
  if (gap) flags.push(gap);
  if (log.segments.some((s) => s.from === pull.from)) flags.push({ code: 'log/pull-no-start', facts: {} });
  if (log.segments.some((s) => s.to === pull.to)) flags.push({ code: 'log/pull-no-end', facts: {} });
  flags.push(...uncertainEnds(pull));
  return flags;
}

/** The longest of the short gaps within a pull, if it has any. */
export function gapIn(log: Log, pull: Span): Note | null {
  const segment = log.segments.find((s) => s.from <= pull.from && pull.from < s.to);
  let at = -1;
  let missing_s = 0;
  for (const i of segment?.gapsBefore ?? []) {
    const gap_s = (log.time[i] ?? 0) - (log.time[i - 1] ?? 0);
    if (i > pull.from && i < pull.to && gap_s > missing_s) {
      at = i - 1;
      missing_s = gap_s;
    }
  }
  return at < 0 ? null : { code: 'log/pull-gap', facts: { time_s: ownTimeAt(log, at), missing_s } };
}

/** Ends that may be further off than those that a pedal tells; see the table of pulls in the README. */
function uncertainEnds({ startWithin_s = 0, endWithin_s = 0 }: EndedSpan): Note[] {
  const flags: Note[] = [];
  if (startWithin_s > certain_s)
    flags.push({ code: 'log/pull-start-uncertain', facts: { within_s: startWithin_s } });
  if (endWithin_s > certain_s)
    flags.push({ code: 'log/pull-end-uncertain', facts: { within_s: endWithin_s } });
  return flags;
}

/** Moment of a sample by the file's own clock [s]. */
function ownTimeAt(log: Log, i: number): number {
  return (log.time[i] ?? 0) - countedOnAt(log, i);
}

/**
 * Where engine speed runs furthest ahead of the road, if it does.
 *
 * @param ratio  engine speed over vehicle speed
 * @param usual  the same in the middle of the pull
 */
export function spinIn(log: Log, ratio: Float64Array, pull: Span, usual: number): Note | null {
  let at = -1;
  let most = Number.NEGATIVE_INFINITY;
  // Three samples, so that one reading of a slow speed channel is no spin.
  for (let i = pull.from + 1; i < pull.to - 1; i++) {
    const level = medianOfThree(ratio, i);
    if (level > most) {
      most = level;
      at = i;
    }
  }
  const excess = most / usual - 1;
  return excess > leastSpin
    ? { code: 'log/pull-wheel-spin', facts: { time_s: ownTimeAt(log, at), excess } }
    : null;
}

/** A limiter channel, bounces, torque taken back at the top, or engine speed that stands still there. */
function limiterOf(
  log: Log,
  pull: GearSpan,
  engine: Float64Array | null,
  short: number | null,
): number | null {
  if (!engine) return null;
  const flag = channelOf(log, 'limiterActive')?.values;
  if (flag) {
    for (let i = pull.from; i < pull.to; i++) if ((flag[i] ?? 0) > 0.5) return engine[i] ?? null;
  }
  const bounce = pull.breaks.find((b) => b.kind === 'limiter');
  if (bounce) return engine[bounce.from] ?? null;
  const top = bouncesAtTop(engine, log.time, pull);
  if (top !== null) return engine[top] ?? null;
  if (short !== null && isLimiterAt(engine, pull, short)) return engine[short] ?? null;
  return levelAtTop(engine, log.time, pull) ?? heldAtEnd(engine, log.time, pull);
}

/** Engine speed where its last quarter of a second lies within 1 %, in a pull that was climbing before. */
function heldAtEnd(engine: Float64Array, time: Float64Array, pull: Span): number | null {
  const end = medianOf(engine, pull.to - 3, pull.to);
  let i = pull.to - 1;
  while (i > pull.from && Math.abs((engine[i] ?? 0) / end - 1) < 0.01) i--;
  const held = (time[pull.to - 1] ?? 0) - (time[i] ?? 0);
  const climbed = end - (engine[pull.from] ?? end);
  const duration = (time[pull.to - 1] ?? 0) - (time[pull.from] ?? 0);
  const usual = (0.02 * end) / Math.max(1e-9, climbed / duration);
  return held > Math.max(0.25, 2.5 * usual) ? end : null;
}

/** Where torque was first taken back, if it was and not by the limiter. */
export function interventionIn(log: Log, pull: Span, short = torqueShortAt(log, pull)): Note | null {
  const traction = tractionIn(log, pull);
  const engine = channelOf(log, 'engineSpeed')?.values;
  const isLimiter = short !== null && engine !== undefined && isLimiterAt(engine, pull, short);
  const at = traction ?? (isLimiter ? null : short);
  return at === null ? null : { code: 'log/pull-intervention', facts: { time_s: ownTimeAt(log, at) } };
}

/** First sample at which a traction channel was active. */
function tractionIn(log: Log, pull: Span): number | null {
  const traction = channelOf(log, 'tractionControl')?.values;
  if (!traction) return null;
  for (let i = pull.from; i < pull.to; i++) if ((traction[i] ?? 0) > 0.5) return i;
  return null;
}

/** First sample at which the throttle shut, or the spark was taken back, while the pedal stayed down. */
function torqueShortAt(log: Log, pull: Span): number | null {
  return closingOf(log, pull) ?? sparkDip(log, pull);
}

function closingOf(log: Log, pull: Span): number | null {
  const throttle = channelOf(log, 'throttle');
  if (!throttle) return closingByPressure(log, pull);
  // A plate that hardly moved did not shut: so it is in nearly every pull.
  const { low, high } = rangeWithin(throttle.values, pull.from, pull.to);
  if (!(low < high - leastClosing)) return null;
  const wide = medianOf(throttle.values, pull.from, pull.to);
  for (let i = pull.from + 1; i < pull.to - 1; i++) {
    if (
      medianOfThree(throttle.values, i) < wide - leastClosing &&
      (log.time[i] ?? 0) > (log.time[pull.from] ?? 0) + 0.3
    )
      return i;
  }
  return null;
}

/** Where pressure alone tells full throttle it falls below an open plate's within a pull only when that closes. */
function closingByPressure(log: Log, pull: Span): number | null {
  if (channelOf(log, 'pedal')) return null;
  const boost = boostOf(log)?.values;
  if (!boost) return null;
  for (let i = pull.from + 1; i < pull.to - 1; i++) {
    const t = log.time[i] ?? 0;
    const isInside = t > (log.time[pull.from] ?? 0) + 0.3 && t < (log.time[pull.to - 1] ?? 0) - 0.3;
    if (isInside && medianOfThree(boost, i) < wideOpen) return i;
  }
  return null;
}

/** The largest retard for knock, where it is any. */
export function knockIn(log: Log, pull: Span): Note | null {
  let at = -1;
  let most = 0;
  for (const channel of log.channels) {
    if (channel.quantity !== 'knockRetard') continue;
    for (let i = pull.from; i < pull.to; i++) {
      const retard = Math.abs(channel.values[i] ?? 0);
      if (retard >= leastRetard_rad && retard > most) {
        most = retard;
        at = i;
      }
    }
  }
  return at < 0 ? null : { code: 'log/pull-knock', facts: { time_s: ownTimeAt(log, at), retard_rad: most } };
}
