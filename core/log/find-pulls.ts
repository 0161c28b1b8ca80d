import type { Note } from '../result/index.ts';
import { type Channel, channelOf, type Log } from './channel.ts';
import { fullLevel, fullSpans } from './full-throttle.ts';
import { gearOf } from './gear-of.ts';
import { type GearSpan, splitByGear } from './one-gear.ts';
import type { Pull } from './pull.ts';
import { pullFlags } from './pull-flags.ts';
import { medianOf, speedRatio } from './speed-ratio.ts';

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

/** A pull before it is known how it compares with the others. */
type Draft = GearSpan & { first: number; last: number; ratio: number };

/**
 * Full-throttle pulls in a log, each in one gear, in the order of the file.
 *
 * A pull starts with the first sample at full throttle and ends with the last before the lift. Full throttle is
 * told by the pedal, else the throttle.
 *
 * @param options  the car's gears, so that a pull's gear can be named
 * @returns        pulls, aborted ones among them as not complete, and what is to be said of the whole log
 */
export function findPulls(log: Log, options: PullOptions = {}): FoundPulls {
  const engine = channelOf(log, 'engineSpeed');
  if (!engine) return { pulls: [], warnings: [{ code: 'log/no-engine-speed', facts: {} }] };
  const road = channelOf(log, 'vehicleSpeed') ?? channelOf(log, 'gpsSpeed');
  const ratio = road ? speedRatio(engine.values, road.values) : null;
  const opening = openingOf(log);
  const drafts: Draft[] = [];
  if (opening) {
    for (const span of fullSpans(opening.channel.values, opening.level, log.time, log.segments)) {
      for (const part of splitByGear(engine.values, ratio, log.time, span)) {
        const draft = draftOf(log, engine.values, ratio, part);
        if (draft) drafts.push(draft);
      }
    }
  }
  const pulls = drafts.map((draft): Pull => {
    const { first, last, ratio: pullRatio } = draft;
    return {
      from: draft.from,
      to: draft.to,
      start_s: log.time[draft.from] ?? 0,
      end_s: log.time[draft.to - 1] ?? 0,
      gear: gearOf(log, draft, pullRatio, options),
      rpmFrom: (first * 30) / Math.PI,
      rpmTo: (last * 30) / Math.PI,
      complete: isComplete(draft, drafts),
      flags: pullFlags(log, draft, { isAborted: !isComplete(draft, drafts), ratio }),
    };
  });
  return { pulls, warnings: pulls.length === 0 ? [{ code: 'log/no-pulls', facts: {} }] : [] };
}

/** Pedal before throttle: a throttle plate may close on the engine's own account. */
function openingOf(log: Log): { channel: Channel; level: NonNullable<ReturnType<typeof fullLevel>> } | null {
  for (const quantity of ['pedal', 'throttle'] as const) {
    const channel = channelOf(log, quantity);
    const level = channel ? fullLevel(channel.values) : null;
    if (channel && level) return { channel, level };
  }
  return null;
}

function draftOf(
  log: Log,
  engineSpeed: Float64Array,
  ratio: Float64Array | null,
  part: GearSpan,
): Draft | null {
  const duration = (log.time[part.to - 1] ?? 0) - (log.time[part.from] ?? 0);
  if (duration < shortest_s) return null;
  const first = endOfLine(engineSpeed, log.time, part.from, part.to, 1);
  const last = endOfLine(engineSpeed, log.time, part.from, part.to, -1);
  const rise = last - first;
  if (!(rise >= leastRise_rad_s && last >= leastRise * first)) return null;
  if (rise / duration > fastestRise) return null;
  return { ...part, first, last, ratio: ratio ? medianOf(ratio, part.from, part.to) : Number.NaN };
}

/** Engine speed at one end of a span: the median of its first (or last) tenth of a second stands against noise. */
function endOfLine(
  values: Float64Array,
  time: Float64Array,
  from: number,
  to: number,
  direction: 1 | -1,
): number {
  const edge = direction === 1 ? from : to - 1;
  let other = edge;
  while (
    other + direction >= from &&
    other + direction < to &&
    Math.abs((time[other + direction] ?? 0) - (time[edge] ?? 0)) <= 0.1
  )
    other += direction;
  return medianOf(values, Math.min(edge, other), Math.max(edge, other) + 1);
}

/** Whether a pull reached a usable span, by itself and beside the others of its gear. */
function isComplete(draft: Draft, all: readonly Draft[]): boolean {
  const rise = draft.last - draft.first;
  if (rise < usableSpan_rad_s || draft.last < lowestEnd_rad_s) return false;
  const top = all.reduce((most, d) => Math.max(most, d.last), 0);
  if (draft.last >= 0.85 * top) return true;
  const sameGear = all.filter((d) => !(Math.abs(d.ratio / draft.ratio - 1) > 0.08));
  const widest = sameGear.reduce((most, d) => Math.max(most, d.last - d.first), 0);
  return rise >= 0.65 * widest;
}
