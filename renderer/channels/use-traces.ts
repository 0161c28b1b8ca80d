import { useEffect, useState } from 'react';
import { fromSamples, type PullSummary, type Snapshot } from '../../core/contract/index.ts';
import { useHost } from '../host/HostProvider.tsx';
import { type ChannelChoice, columnIn } from './channel-choice.ts';

/** Pinned pulls belong to entries that are not on the bench now. */
export type Side = 'before' | 'after' | 'pinned';
export type ShownPull = { readonly pull: PullSummary; readonly side: Side };

/** One channel of one pull, SI; `time` [s] from the start of the pull, all arrays one length. */
export type Trace = {
  readonly key: string;
  readonly pullId: string;
  readonly side: Side;
  readonly time: Float64Array;
  readonly values: Float64Array;
};

/** Points a pull and channel: a pull of ten seconds at 1 kHz whole; of more, minima and maxima are kept. */
const mostPoints = 20_000;

/** The chosen channels of these pulls; null until the first answer is in. What can't be read is simply not there. */
export function useTraces(
  snapshot: Snapshot,
  pulls: readonly ShownPull[],
  choices: readonly ChannelChoice[],
): readonly Trace[] | null {
  const host = useHost();
  const [traces, setTraces] = useState<readonly Trace[] | null>(null);
  useEffect(() => {
    const abort = new AbortController();
    const ask = async ({ pull, side }: ShownPull): Promise<Trace[]> => {
      const run = snapshot.runs.find((r) => r.record.id === pull.runId);
      if (!run) return [];
      const columns = choices.flatMap((c) => {
        const column = columnIn(run, c);
        return column === null ? [] : [{ key: c.key, column }];
      });
      const answer = await host.request(
        'runs.channels',
        {
          runId: pull.runId,
          columns: columns.map((c) => c.column),
          from_s: pull.start_s,
          to_s: pull.end_s,
          most: mostPoints,
        },
        { signal: abort.signal },
      );
      if (!answer.ok) return [];
      return columns.flatMap(({ key, column }) => {
        const channel = answer.value.channels.find((c) => c.column === column);
        if (!channel) return [];
        const time = fromSamples(channel.time).map((t) => t - pull.start_s);
        return [{ key, pullId: pull.id, side, time, values: fromSamples(channel.values) }];
      });
    };
    Promise.all(pulls.map(ask)).then((all) => {
      if (!abort.signal.aborted) setTraces(all.flat());
    });
    return () => abort.abort();
  }, [host, snapshot, pulls, choices]);
  return traces;
}
