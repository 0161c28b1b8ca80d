import type { Snapshot } from '../../core/contract/index.ts';
import type { RunRecord, SessionEdit } from '../../core/session/index.ts';
import { type ChangeDraft, newEntry } from '../entry/change-draft.ts';
import { newChange, noEntry, type Target } from './assign-files.ts';

/** A log in one of the entries that hold it; null for one that no entry holds. */
export type LogPlace = {
  readonly key: string;
  readonly runId: string;
  readonly name: string;
  readonly entryId: string | null;
};

/** Where the logs of a session stand, those in no entry first; null asks for all of them. */
export function logPlaces(snapshot: Snapshot, runId: string | null): LogPlace[] {
  const { ledger } = snapshot.session;
  const names = new Map(snapshot.runs.map(({ record }) => [record.id, record.name]));
  const held = ledger.flatMap((entry) =>
    [...new Set(entry.runs.map((r) => r.runId))].map((id) => ({ runId: id, entryId: entry.id })),
  );
  const loose = unplacedRuns(snapshot).map((id) => ({ runId: id, entryId: null }));
  return [...loose, ...held].flatMap((place) => {
    const name = names.get(place.runId);
    if (name === undefined || (runId !== null && place.runId !== runId)) return [];
    return [{ ...place, name, key: `${place.runId} ${place.entryId}` }];
  });
}

/** Logs that were brought in and stand in no entry. */
export function unplacedRuns({ session, runs }: Snapshot): string[] {
  const held = new Set(session.ledger.flatMap((e) => e.runs.map((r) => r.runId)));
  return runs.map((r) => r.record.id).filter((id) => !held.has(id));
}

/**
 * Of these, the logs that wait for an entry. A shorter copy of a log that was written on stays behind when the longer
 * one takes its place: it has the same name, and would count twice.
 */
export function waitingRuns(snapshot: Snapshot): string[] {
  const unplaced = new Set(unplacedRuns(snapshot));
  const [waiting, held] = [true, false].map((is) =>
    snapshot.runs.map((r) => r.record).filter((r) => unplaced.has(r.id) === is),
  );
  const isLonger = (a: RunRecord, b: RunRecord) => a.name === b.name && a.size_bytes > b.size_bytes;
  return (waiting ?? []).filter((run) => !held?.some((one) => isLonger(one, run))).map((run) => run.id);
}

/** The choice that leaves a log where it is. */
export function targetOf(place: LogPlace): Target {
  return place.entryId ?? noEntry;
}

/** Edits that bring each log to its target, and the entry that is written down for those of a new change. */
export function placeEdits(
  places: readonly LogPlace[],
  targets: readonly Target[],
  draft: ChangeDraft,
): { edits: SessionEdit[]; newId: string | null } {
  const added = targets.includes(newChange) ? newEntry(draft) : null;
  const moves = places.flatMap((place, i): SessionEdit[] => {
    const target = targets[i] ?? targetOf(place);
    if (target === targetOf(place)) return [];
    const to = target === newChange ? (added?.id ?? null) : target === noEntry ? null : target;
    const { runId, entryId } = place;
    if (entryId === null) {
      return to === null ? [] : [{ type: 'entry.takeRun', entryId: to, runId, from_s: null, to_s: null }];
    }
    return [
      to === null
        ? { type: 'entry.leaveRun', entryId, runId }
        : { type: 'entry.moveRun', entryId, runId, to },
    ];
  });
  const edits: SessionEdit[] = added ? [{ type: 'entry.add', entry: added }, ...moves] : moves;
  return { edits, newId: added?.id ?? null };
}
