import { useState } from 'react';
import { fromSamples, type PullSummary } from '../../core/contract/index.ts';
import type { QuantityId } from '../../core/log/index.ts';
import { surestOf } from '../channels/channel-choice.ts';
import { useAnswer } from '../hooks/use-answer.ts';
import { useSession } from '../hooks/use-session.tsx';

/** Seen on each side of the pull [s]: a gear change and what came before it. Common practice. */
const margin_s = 3;

/** What shows a pull best, the first that a log has. */
const speeds: readonly QuantityId[] = ['engineSpeed', 'vehicleSpeed', 'gpsSpeed'];

/** More than a screen is wide; of a log with more, minima and maxima are kept. */
const mostPoints = 20_000;

export type PullSpeed = {
  readonly quantity: QuantityId;
  /** [s] on the log's own clock, ascending; `values` in SI, as many. */
  readonly time: Float64Array;
  readonly values: Float64Array;
};

/**
 * Speed over time, from before a pull until after it. Null while it is read and where the log has none.
 *
 * @returns `isBusy` while it is read
 */
export function usePullSpeed(pull: PullSummary): { speed: PullSpeed | null; isBusy: boolean } {
  const { snapshot } = useSession();
  // As it stood when it was opened: the window holds still under what is moved in it.
  const [window_s] = useState([Math.max(0, pull.start_s - margin_s), pull.end_s + margin_s] as const);
  const run = snapshot?.runs.find((r) => r.record.id === pull.runId);
  const quantity = speeds.find((q) => run && surestOf(run, q) !== null) ?? null;
  const column = run && quantity ? surestOf(run, quantity) : null;
  const input = { runId: pull.runId, columns: [column ?? ''], from_s: window_s[0], to_s: window_s[1] };
  const answer = useAnswer(
    'runs.channels',
    column === null ? null : { ...input, most: mostPoints },
    snapshot?.revision ?? 0,
    pull.id,
  );
  const channel = answer.value?.channels[0];
  if (!channel || quantity === null) return { speed: null, isBusy: answer.isBusy };
  const [time, values] = [fromSamples(channel.time), fromSamples(channel.values)];
  return { speed: time.length > 1 ? { quantity, time, values } : null, isBusy: false };
}
