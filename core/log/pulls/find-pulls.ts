import type { Note } from '../../result/index.ts';
import { channelOf, type Log } from '../channel.ts';
import type { Span } from '../span.ts';
import { movingSpeedOf } from '../speeds/moving-speed.ts';
import { speedRatio, withoutSpikes } from '../speeds/speed-ratio.ts';
import { lineBetweenReadings } from '../time/held-readings.ts';
import { gearOf } from './gear-of.ts';
import { isLaunch } from './launch.ts';
import { splitByGear } from './one-gear.ts';
import type { Pull } from './pull.ts';
import { type Draft, draftOf, isComplete } from './pull-draft.ts';
import { pullFlags } from './pull-flags.ts';
import { pullTimes } from './pull-times.ts';
import { pullsByRoadSpeed } from './pulls-by-road-speed.ts';
import { ratioOnTime } from './ratio-on-time.ts';
import { fullThrottleOf } from './where-floored.ts';

/** What the car tells about its gears; all may be unknown. */
export type PullOptions = {
  readonly gearRatios?: readonly number[];
  readonly finalDrive?: number | null;
  readonly rollingRadius_m?: number | null;
  readonly pullGear?: number | null;
};

export type FoundPulls = { readonly pulls: readonly Pull[]; readonly warnings: readonly Note[] };

/**
 * Full-throttle pulls in a log, each in one gear, in the order of the file.
 *
 * A pull starts with the first sample at full throttle and ends with the last before the lift. Full throttle is
 * told by the pedal, else the throttle, else boost and acceleration, else acceleration alone. Without engine speed the
 * road's serves (pulls-by-road-speed).
 *
 * @param options  the car's gears, so that a pull's gear can be named
 * @returns        pulls, aborted ones among them as not complete, and what is to be said of the whole log
 */
export function findPulls(log: Log, options: PullOptions = {}): FoundPulls {
  const logged = channelOf(log, 'engineSpeed');
  const road = movingSpeedOf(log);
  if (!logged && road) return pullsByRoadSpeed(log, road, options);
  if (!logged) return { pulls: [], warnings: [{ code: 'log/no-engine-speed', facts: {} }] };
  const engine = { values: withoutSpikes(logged.values) };
  const roadSpeed = road && lineBetweenReadings(log.time, road.values, log.segments);
  const ratioWithin = (spans?: readonly Span[]) => roadSpeed && speedRatio(engine.values, roadSpeed, spans);
  const found = fullThrottleOf(log, engine.values, () => ratioWithin());
  const ratio = ratioWithin(found.spans);
  const isByFoot = found.by === 'pedal' || found.by === 'throttle';
  const drafts: Draft[] = [];
  for (const span of found.spans) {
    for (const part of splitByGear(engine.values, ratio, log.time, span)) {
      if (!isByFoot && roadSpeed && isLaunch(engine.values, roadSpeed, part)) continue;
      const draft = draftOf(log, engine.values, ratio, part, isByFoot);
      if (!draft) continue;
      // A gear change within the span is seen by itself.
      const startAt_s = part.startAt_s ?? (part.from === span.from ? span.startAt_s : undefined);
      const endAt_s = part.to === span.to ? span.endAt_s : undefined;
      const startWithin_s = part.from === span.from ? (span.startWithin_s ?? 0) : 0;
      const endWithin_s = part.to === span.to ? (span.endWithin_s ?? 0) : 0;
      drafts.push({ ...draft, startAt_s, endAt_s, startWithin_s, endWithin_s });
    }
  }
  const top = drafts.reduce((most, d) => Math.max(most, d.last), 0);
  const pulls = drafts.map((draft): Pull => {
    const { first, last } = draft;
    const complete = isComplete(draft, drafts, top);
    return {
      from: draft.from,
      to: draft.to,
      ...pullTimes(log, draft),
      gear: gearOf(log, draft, options, () => ratioOnTime(log, engine.values, road, draft)),
      rpmFrom: (first * 30) / Math.PI,
      rpmTo: (last * 30) / Math.PI,
      complete,
      flags: pullFlags(log, draft, { isAborted: !complete, ratio, engine: logged.values }),
    };
  });
  const warnings: Note[] = [];
  if (pulls.length === 0) warnings.push({ code: 'log/no-pulls', facts: {} });
  else if (!isByFoot) warnings.push({ code: 'log/pulls-by', facts: { quantity: found.by } });
  return { pulls, warnings };
}
