import { channelOf, flagsWithin, type Log, type Pull } from '../log/index.ts';
import type { PullEdit } from './run-record.ts';

/** What a person decided about whether a pull counts, and why; the reason of taking one back in may be empty. */
export type PullDecision = { readonly action: 'drop' | 'restore'; readonly reason: string };

/** A pull with what a person decided about it. */
export type EditedPull = {
  readonly id: string;
  readonly runId: string;
  readonly pull: Pull;
  /** Complete and not dropped. */
  readonly counts: boolean;
  readonly droppedBecause: string | null;
  /** Every time it was left out or taken back in, oldest first: a reason outlives what it decided. */
  readonly decisions: readonly PullDecision[];
  readonly isTrimmed: boolean;
  /** Why its ends were moved; null where they were not, or the pull was set by hand. */
  readonly trimmedBecause: string | null;
};

/** First index whose time is not before `at`. */
function indexAt(time: Float64Array, at: number): number {
  let low = 0;
  let high = time.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time[middle] ?? 0) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The samples between the pulls before and after one and within its segment, which its ends must not leave. */
function roomOf(
  log: Log,
  pull: Pull,
  others: readonly Pull[],
): { readonly from: number; readonly to: number } {
  const segment = log.segments.find((s) => s.from <= pull.from && pull.from < s.to);
  let from = segment?.from ?? 0;
  let to = segment?.to ?? log.time.length;
  for (const other of others) {
    if (other.to <= pull.from) from = Math.max(from, other.to);
    if (other.from >= pull.to) to = Math.min(to, other.from);
  }
  return { from, to };
}

/** The pull cut to another window of the same log; ends outside the room are brought inside. */
function windowOf(
  log: Log,
  pull: Pull | null,
  from_s: number,
  to_s: number,
  room = { from: 0, to: log.time.length },
): Pull | null {
  const from = Math.max(room.from, indexAt(log.time, from_s));
  // The last sample at or before the end belongs to the pull.
  const to = Math.min(room.to, indexAt(log.time, to_s + 1e-9));
  if (to - from < 2) return null;
  const speed = channelOf(log, 'engineSpeed');
  const toRpm = 30 / Math.PI;
  return {
    from,
    to,
    start_s: log.time[from] ?? from_s,
    end_s: log.time[to - 1] ?? to_s,
    gear: pull?.gear ?? null,
    rpmFrom: (speed?.values[from] ?? Number.NaN) * toRpm,
    rpmTo: (speed?.values[to - 1] ?? Number.NaN) * toRpm,
    complete: true,
    flags: flagsWithin(log, pull ?? { from, to, flags: [] }, { from, to }),
  };
}

/**
 * The pulls of a run after everything that was done to them by hand, in order of time. An edit names its pull
 * by a moment inside it; one that meets no pull any more changes nothing. A pull that is trimmed past its neighbour
 * ends where that begins: no sample belongs to two pulls.
 */
export function editPulls(
  log: Log,
  runId: string,
  found: readonly Pull[],
  edits: readonly PullEdit[],
): EditedPull[] {
  type Draft = {
    pull: Pull;
    /** As it was found: a later trim may bring back what an earlier one cut off. */
    found: Pull | null;
    dropped: string | null;
    decisions: PullDecision[];
    forced: boolean;
    trimmed: boolean;
    because: string | null;
  };
  const drafts: Draft[] = found.map((pull) => ({
    pull,
    found: pull,
    dropped: null,
    decisions: [],
    forced: false,
    trimmed: false,
    because: null,
  }));
  for (const edit of edits) {
    if (edit.action === 'add') {
      const added = windowOf(log, null, edit.from_s ?? edit.at_s, edit.to_s ?? edit.at_s);
      if (added)
        drafts.push({
          pull: added,
          found: null,
          dropped: null,
          decisions: [],
          forced: true,
          trimmed: true,
          because: null,
        });
      continue;
    }
    const draft = drafts.find((d) => d.pull.start_s <= edit.at_s && edit.at_s <= d.pull.end_s);
    if (!draft) continue;
    if (edit.action !== 'trim') draft.decisions.push({ action: edit.action, reason: edit.reason });
    if (edit.action === 'drop') draft.dropped = edit.reason;
    if (edit.action === 'restore') {
      draft.dropped = null;
      draft.forced = true;
    }
    if (edit.action === 'trim') {
      const others = drafts.filter((d) => d !== draft).map((d) => d.pull);
      const trimmed = windowOf(
        log,
        { ...draft.pull, flags: draft.found?.flags ?? [] },
        edit.from_s ?? draft.pull.start_s,
        edit.to_s ?? draft.pull.end_s,
        roomOf(log, draft.pull, others),
      );
      if (trimmed) {
        draft.pull = trimmed;
        draft.trimmed = true;
        draft.because = edit.reason;
      }
    }
  }
  return drafts
    .sort((a, b) => a.pull.start_s - b.pull.start_s)
    .map(({ pull, dropped, decisions, forced, trimmed, because }) => ({
      id: `${runId}:${pull.start_s.toFixed(2)}`,
      runId,
      pull,
      counts: dropped === null && (pull.complete || forced),
      droppedBecause: dropped,
      decisions,
      isTrimmed: trimmed,
      trimmedBecause: because,
    }));
}
