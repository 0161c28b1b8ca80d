import { fail, ok, type Result } from '../result/index.ts';
import type { Entry } from './entry.ts';
import type { RunRecord } from './run-record.ts';

type Part = Entry['runs'][number];

/**
 * The ledger after a log has gone from one entry to another, with its window. What was said of the log stands in its
 * own record and goes along. Where the other entry holds the same pulls already they do not count twice: the two
 * windows become one. Logs of an entry stand in the order in which they came in.
 *
 * Errors: session/no-entry, session/run-not-in-entry.
 */
export function ledgerAfterMove(
  ledger: readonly Entry[],
  runs: Readonly<Record<string, RunRecord>>,
  move: { readonly runId: string; readonly entryId: string; readonly to: string },
): Result<Entry[]> {
  const { runId, entryId, to } = move;
  for (const id of [entryId, to]) {
    if (!ledger.some((e) => e.id === id)) return fail({ code: 'session/no-entry', facts: { entryId: id } });
  }
  const parts = ledger.find((e) => e.id === entryId)?.runs.filter((r) => r.runId === runId) ?? [];
  if (parts.length === 0) return fail({ code: 'session/run-not-in-entry', facts: { entryId, runId } });
  if (entryId === to) return ok([...ledger]);
  const cameIn = (part: Part) => runs[part.runId]?.importedAt ?? '';
  return ok(
    ledger.map((entry) => {
      if (entry.id === entryId) return { ...entry, runs: entry.runs.filter((r) => r.runId !== runId) };
      if (entry.id !== to) return entry;
      return { ...entry, runs: parts.reduce((all, part) => withPart(all, part, cameIn), entry.runs) };
    }),
  );
}

function withPart(all: readonly Part[], part: Part, cameIn: (part: Part) => string): Part[] {
  const same = all.find((one) => one.runId === part.runId && overlap(one, part));
  if (same) return withPart([...all.filter((one) => one !== same)], joined(same, part), cameIn);
  const later = all.findIndex((one) => cameIn(one) > cameIn(part));
  const at = later < 0 ? all.length : later;
  return [...all.slice(0, at), part, ...all.slice(at)];
}

const begin = (part: Part) => part.from_s ?? Number.NEGATIVE_INFINITY;
const end = (part: Part) => part.to_s ?? Number.POSITIVE_INFINITY;

function overlap(a: Part, b: Part): boolean {
  return begin(a) <= end(b) && begin(b) <= end(a);
}

function joined(a: Part, b: Part): Part {
  return {
    ...a,
    from_s: begin(a) <= begin(b) ? a.from_s : b.from_s,
    to_s: end(a) >= end(b) ? a.to_s : b.to_s,
  };
}
