import { ok, type Result } from '../../core/result/index.ts';
import type { SessionEdit, SessionState } from '../../core/session/index.ts';
import { type OpenSession, readSource, sha256 } from '../store/index.ts';

/**
 * Whether one run's log begins with every byte of another's: a logger that paused longer than the watch waits
 * and then wrote on. Its pulls would count twice if both stood in the ledger.
 */
export async function isLongerCopy(
  open: OpenSession,
  runId: string,
  shorterId: string,
): Promise<Result<boolean>> {
  const [longer, shorter] = [open.runs.get(runId)?.record, open.runs.get(shorterId)?.record];
  if (!longer || !shorter || longer.size_bytes <= shorter.size_bytes) return ok(false);
  const bytes = await readSource(open, runId);
  return bytes.ok ? ok(sha256(bytes.value.subarray(0, shorter.size_bytes)) === shorter.sha256) : bytes;
}

/** Edits by which the longer run takes over what a person said of the shorter one, and its place in each entry. */
export function standInEdits(state: SessionState, runId: string, shorterId: string): SessionEdit[] {
  const shorter = state.runs[shorterId];
  if (!shorter) return [];
  const { note, columns, conditions, direction, pullEdits } = shorter;
  const places = state.session.ledger.flatMap((entry) =>
    entry.runs.filter((r) => r.runId === shorterId).map(({ from_s, to_s }) => ({ entry, from_s, to_s })),
  );
  return [
    { type: 'run.set', runId, patch: { note, columns, conditions, direction } },
    ...pullEdits.map((edit): SessionEdit => ({ type: 'pull.edit', runId, edit })),
    ...places.flatMap(({ entry, from_s, to_s }): SessionEdit[] => [
      { type: 'entry.leaveRun', entryId: entry.id, runId: shorterId },
      { type: 'entry.takeRun', entryId: entry.id, runId, from_s, to_s },
    ]),
  ];
}
