import { createHash } from 'node:crypto';
import { fail, ok, type Result } from '../../core/result/index.ts';
import type { SessionEdit, SessionState } from '../../core/session/index.ts';
import { type OpenSession, openSource, type SourceStream } from '../store/index.ts';

/** Bytes compared at once, some milliseconds' worth. */
const partLength = 1 << 20;
/** A logger may write its head anew when it ends: rows, date, duration (common practice: no head is longer). */
const longestHead_bytes = 4_096;
/** Rows by which the same place is found behind two heads: some lines of numbers, which no clock writes twice. */
const anchorLength = 256;

/**
 * Whether one run's log is a later state of another's: a logger that paused longer than the watch waits and then wrote
 * on, also one that filled in zeros which it had laid down before, or wrote its head anew, as long as the old one or not.
 * The pulls would count twice if both stood in the ledger. Read in parts, so that a big log never lies in memory whole.
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
    const [nowParts, thenParts] = [partsOf(later.value), partsOf(earlier.value)];
    let [now, then] = [await nowParts.next(), await thenParts.next()];
    const rows = behindHeads(now, then);
    const compare = createComparison(rows);
    [now, then] = [now.subarray(rows.inLater), then.subarray(rows.inEarlier)];
    while (now.length > 0 || then.length > 0) {
      // What one of them has beyond the end of the other is compared with nothing.
      const length = Math.min(now.length, then.length) || Math.max(now.length, then.length);
      compare.take(now.subarray(0, length), then.subarray(0, length));
      [now, then] = [now.subarray(length), then.subarray(length)];
      if (now.length === 0) now = await nowParts.next();
      if (then.length === 0) then = await thenParts.next();
    }
    const damage = later.value.damage(nowParts.digest()) ?? earlier.value.damage(thenParts.digest());
    return damage ? fail(damage) : ok(compare.isContinued());
  } finally {
    if (later.ok) await later.value.close();
    if (earlier.ok) await earlier.value.close();
  }
}

/** A log part by part, each filled until the log ends; the last ones are empty. */
function partsOf(source: SourceStream) {
  const room = new Uint8Array(partLength);
  const sum = createHash('sha256');
  return {
    async next(): Promise<Uint8Array> {
      let filled = 0;
      while (filled < room.length) {
        const length = await source.read(room.subarray(filled));
        if (length === 0) break;
        filled += length;
      }
      const part = room.subarray(0, filled);
      sum.update(part);
      return part;
    },
    digest: () => sum.digest('hex'),
  };
}

type Rows = { readonly inLater: number; readonly inEarlier: number };

/** Where the same rows begin in both states: at the start, or behind heads that differ in words or in length. */
function behindHeads(now: Uint8Array, then: Uint8Array): Rows {
  const differs = then.findIndex((byte, i) => byte !== now[i]);
  const start = { inLater: 0, inEarlier: 0 };
  if (differs < 0 || differs >= longestHead_bytes || then[differs] === 0) return start;
  const anchor = Buffer.from(then.subarray(longestHead_bytes, longestHead_bytes + anchorLength));
  if (anchor.length < anchorLength) return start;
  const isThere = (at: number) => at >= 0 && anchor.equals(now.subarray(at, at + anchorLength));
  // A head of the same length first.
  for (let shift = 0; shift <= longestHead_bytes; shift++)
    for (const at of [longestHead_bytes + shift, longestHead_bytes - shift])
      if (isThere(at)) return { inLater: at, inEarlier: longestHead_bytes };
  return start;
}

/** Compares two states of a file, part by part from where their rows begin. */
function createComparison({ inEarlier: from }: Rows) {
  let at = from;
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
        else isOther = true;
      }
    },
    /** Behind a new head there must be rows that are the same. */
    isContinued: () => !isOther && written > (from === 0 ? 0 : 2 * longestHead_bytes),
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
