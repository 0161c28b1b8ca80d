import type { Note } from '../../result/index.ts';
import { channelOf, type Log } from '../channel.ts';
import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';
import { movingSpeedOf } from '../speeds/moving-speed.ts';
import { speedRatio, withoutSpikes } from '../speeds/speed-ratio.ts';
import { lineBetweenReadings } from '../time/held-readings.ts';
import { countedOnAt } from '../time/own-clock.ts';
import { gapIn, interventionIn, knockIn, spinIn } from './pull-flags.ts';

/** A moment in a flag is a stamp of the file. */
const sameMoment_s = 1e-6;

/** What is said of an end as it was found: a hand that moved it knows better. */
const ofStart = ['log/pull-start-uncertain', 'log/pull-no-start'] as const;
const ofEnd = ['log/pull-end-uncertain', 'log/pull-no-end'] as const;

/**
 * What is still to be said of a pull whose ends were moved by hand. A flag whose moment was cut off goes, unless the
 * same happened within too: a flag names the worst moment or the first, not each. Knock is looked for in all of it,
 * since the ends may have been moved outwards. What was doubtful about an end goes with that end; any other flag without
 * a moment stays.
 *
 * @param found  the pull as it was found
 * @param span   samples that the pull has now
 */
export function flagsWithin(log: Log, found: Span & { readonly flags: readonly Note[] }, span: Span): Note[] {
  const countedOn = countedOnAt(log, span.from);
  const first = (log.time[span.from] ?? Number.NaN) - countedOn - sameMoment_s;
  const last = (log.time[span.to - 1] ?? Number.NaN) - countedOn + sameMoment_s;
  const knock = knockIn(log, span);
  const movedEnds = [...(span.from === found.from ? [] : ofStart), ...(span.to === found.to ? [] : ofEnd)];
  const kept = found.flags.flatMap((flag): Note[] => {
    if (movedEnds.some((code) => code === flag.code)) return [];
    if (flag.code === 'log/pull-knock') return knock ? [knock] : [];
    const at = momentOf(flag);
    if (at === null || (at >= first && at <= last)) return [flag];
    const again = sameAgain(log, flag, span);
    return again ? [again] : [];
  });
  return knock && !kept.includes(knock) ? [...kept, knock] : kept;
}

function momentOf({ facts }: Note): number | null {
  return 'time_s' in facts && typeof facts.time_s === 'number' ? facts.time_s : null;
}

function sameAgain(log: Log, flag: Note, span: Span): Note | null {
  if (flag.code === 'log/pull-intervention') return interventionIn(log, span);
  if (flag.code === 'log/pull-gap') return gapIn(log, span);
  if (flag.code !== 'log/pull-wheel-spin') return null;
  const engine = channelOf(log, 'engineSpeed');
  const road = movingSpeedOf(log);
  if (!engine || !road) return null;
  const onTime = lineBetweenReadings(log.time, road.values, log.segments);
  const ratio = speedRatio(withoutSpikes(engine.values), onTime, [span]);
  return spinIn(log, ratio, span, medianOf(ratio, span.from, span.to));
}
