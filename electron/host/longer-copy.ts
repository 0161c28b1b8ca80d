import { createHash } from 'node:crypto';
import { fail, ok, type Result } from '../../core/result/index.ts';
import type { SessionEdit, SessionState } from '../../core/session/index.ts';
import { type OpenSession, openSource, type SourceStream } from '../store/index.ts';

/** Bytes compared at once, some milliseconds' worth. */
const partLength = 1 << 20;
/** A logger may write its head anew when it ends: rows, date, duration (common practice: no head is longer). */
const longestHead_bytes = 4_096;

/**
 * Whether one run's log is a later state of another's: a logger that paused longer than the watch waits and then wrote
 * on, also one that filled in zeros which it had laid down before, or wrote its head anew over the old one. The pulls
 * would count twice if both stood in the ledger. Read in parts, so that a big log never lies in memory whole.
 *
 * Errors: those of openSource; store/source-damaged.
 */
export async function isLongerCopy(
  open: OpenSession,
  runId: string,
  earlierId: string,
): Promise<Result<boolean>> {
  const [later, earlier] = [await openSource(open, runId), await openSource(open, earlierId)];
  try {
    if (!later.ok) return later;
    if (!earlier.ok) return earlier;
    const sums = [createHash('sha256'), createHash('sha256')] as const;
    const parts = [new Uint8Array(partLength), new Uint8Array(partLength)] as const;
    const compare = createComparison();
    for (;;) {
      const now = parts[0].subarray(0, await fill(later.value, parts[0]));
      const then = parts[1].subarray(0, await fill(earlier.value, parts[1]));
      if (now.length === 0 && then.length === 0) break;
      sums[0].update(now);
      sums[1].update(then);
      compare.take(now, then);
    }
    const damage = later.value.damage(sums[0].digest('hex')) ?? earlier.value.damage(sums[1].digest('hex'));
    return damage ? fail(damage) : ok(compare.isContinued());
  } finally {
    if (later.ok) await later.value.close();
    if (earlier.ok) await earlier.value.close();
  }
}

/** Reads until the room is full or the log ends. */
async function fill(source: SourceStream, room: Uint8Array): Promise<number> {
  let filled = 0;
  while (filled < room.length) {
    const length = await source.read(room.subarray(filled));
    if (length === 0) break;
    filled += length;
  }
  return filled;
}

/** Compares two states of a file, part by part from the start of each. */
function createComparison() {
  let at = 0;
  let isHeadNew = false;
  /** From here the earlier state holds zeros alone. */
  let isPadding = false;
  let isOther = false;
  let written = 0;
  return {
    take(now: Uint8Array, then: Uint8Array): void {
      for (let i = 0; i < then.length && !isOther; i++, at++) {
        const byte = then[i];
        if (byte !== 0) written = at + 1;
        if (isPadding) isOther = byte !== 0;
        else if (i < now.length && byte === now[i]) continue;
        else if (byte === 0) isPadding = true;
        else if (at < longestHead_bytes && i < now.length) isHeadNew = true;
        else isOther = true;
      }
    },
    /** Behind a new head there must be rows that are the same. */
    isContinued: () => !isOther && written > 0 && (!isHeadNew || written > 2 * longestHead_bytes),
  };
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
