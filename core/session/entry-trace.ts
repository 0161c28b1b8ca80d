import { boostOf, channelOf } from '../log/index.ts';
import type { OperatingState } from '../tables/index.ts';
import type { Analyses } from './entry-pulls.ts';
import type { RunRecord } from './run-record.ts';
import type { Session } from './session.ts';

/** The states of the engine that one pull went through, in the order of the log. */
export type PullTrace = {
  readonly pullId: string;
  readonly entryId: string;
  readonly states: readonly OperatingState[];
};

/** More points than cells of a table across would only lie on each other. */
const mostPoints = 160;

/**
 * Where in a table the counted pulls of an entry went: engine speed, boost, throttle and fluid flow as logged. What a log
 * does not hold is NaN. Every n-th sample, so that none is made up between two.
 */
export function entryTrace(
  session: Session,
  records: Readonly<Record<string, RunRecord>>,
  analyses: Analyses,
  entryId: string,
): readonly PullTrace[] {
  const entry = session.ledger.find((e) => e.id === entryId);
  return (entry?.runs ?? []).flatMap(({ runId, from_s, to_s }) => {
    const analysis = analyses.get(runId);
    if (!analysis) return [];
    const conditions = records[runId]?.conditions ?? entry?.conditions ?? session.conditions;
    const { log } = analysis;
    const barometer = conditions.barometer_kPa === null ? null : conditions.barometer_kPa * 1e3;
    const speed = channelOf(log, 'engineSpeed')?.values;
    const boost = boostOf(log, barometer)?.values;
    const throttle = (channelOf(log, 'throttle') ?? channelOf(log, 'pedal'))?.values;
    const flow = channelOf(log, 'fluidFlow')?.values;
    return analysis.pulls
      .filter(({ counts, pull }) => {
        const [from, to] = [from_s ?? Number.NEGATIVE_INFINITY, to_s ?? Number.POSITIVE_INFINITY];
        return counts && pull.start_s >= from && pull.start_s <= to;
      })
      .map(({ id, pull }): PullTrace => {
        const stride = Math.max(1, Math.ceil((pull.to - pull.from) / mostPoints));
        const states: OperatingState[] = [];
        for (let i = pull.from; i < pull.to; i += stride)
          states.push({
            engineSpeed_rad_s: speed?.[i] ?? Number.NaN,
            boost: boost?.[i] ?? Number.NaN,
            throttle: throttle?.[i] ?? Number.NaN,
            fluidFlow: flow?.[i] ?? Number.NaN,
          });
        return { pullId: id, entryId, states };
      });
  });
}
