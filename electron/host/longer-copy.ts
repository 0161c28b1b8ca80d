import { createHash } from 'node:crypto';
import { fail, ok, type Result } from '../../core/result/index.ts';
import type { SessionEdit, SessionState } from '../../core/session/index.ts';
import { type OpenSession, openSource } from '../store/index.ts';

/** Bytes hashed at once, some milliseconds' worth. */
const partLength = 1 << 20;

/**
 * Whether one run's log begins with every byte of another's: a logger that paused longer than the watch waits
 * and then wrote on. Its pulls would count twice if both stood in the ledger. Read in parts, so that a big log never
 * lies in memory whole.
 *
 * Errors: those of openSource; store/source-damaged.
 */
export async function isLongerCopy(
  open: OpenSession,
  runId: string,
  shorterId: string,
): Promise<Result<boolean>> {
  const [longer, shorter] = [open.runs.get(runId)?.record, open.runs.get(shorterId)?.record];
  if (!longer || !shorter || longer.size_bytes <= shorter.size_bytes) return ok(false);
  const source = await openSource(open, runId);
  if (!source.ok) return source;
  const part = new Uint8Array(partLength);
  const hash = createHash('sha256');
  let begins: string | null = null;
  let seen = 0;
  try {
    for (;;) {
      // The last part before the shorter one's end stops right there.
      const wanted = begins === null ? Math.min(partLength, shorter.size_bytes - seen) : partLength;
      const length = await source.value.read(part.subarray(0, wanted));
      if (length === 0) break;
      hash.update(part.subarray(0, length));
      seen += length;
      if (seen === shorter.size_bytes) begins = hash.copy().digest('hex');
    }
  } finally {
    await source.value.close();
  }
  const damage = source.value.damage(hash.digest('hex'));
  return damage ? fail(damage) : ok(begins === shorter.sha256);
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
