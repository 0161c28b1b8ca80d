import {
  type EntryPulls,
  judge,
  judgeSession,
  type SessionLine,
  type SessionTable,
  type Verdict,
} from '../compare/index.ts';
import { declaredChange } from './declared-change.ts';
import { entryBefore } from './edit.ts';
import { type EntryPeak, entryPeak } from './entry-peak.ts';
import { priorOf } from './leaning.ts';
import type { Session } from './session.ts';
import { roadNotes } from './two-ways.ts';

type Band = readonly [number, number];

/** One line of the ledger as computed. */
export type LedgerResult = SessionLine & { readonly peak: EntryPeak | null };

/** The whole ledger: lines, the way from the baseline to now, drift, advice. */
export type LedgerTable = Omit<SessionTable, 'lines'> & { readonly lines: readonly LedgerResult[] };

/**
 * Two entries of a session judged, with the repeatability of all its entries. The declared change is the later
 * entry's where it stands against the earlier; between entries further apart several changes lie, and none of
 * them is declared.
 *
 * @param band  engine speeds to average over [rad/s]; null is all that both sides cover
 */
export function judgeEntries(
  session: Session,
  pulls: readonly EntryPulls[],
  pair: { readonly beforeId: string; readonly afterId: string },
  band: Band | null,
): Verdict {
  const pullsOf = (id: string) => pulls.find((p) => p.id === id)?.pulls ?? [];
  const after = session.ledger.find((e) => e.id === pair.afterId);
  const isOneStep = entryBefore(session, pair.afterId)?.id === pair.beforeId;
  const verdict = judge({
    before: pullsOf(pair.beforeId),
    after: pullsOf(pair.afterId),
    session: pulls,
    declared: isOneStep && after ? declaredChange(after) : null,
    margin: session.limits.margin_percent / 100,
    band_rad_s: band,
    prior: priorOf(session),
  });
  const shown = pulls.filter((p) => p.id === pair.beforeId || p.id === pair.afterId);
  const isLevel = (session.conditions.grade_percent ?? 0) === 0 && session.conditions.place !== 'dyno';
  return { ...verdict, remarks: [...verdict.remarks, ...roadNotes(shown, session.car, isLevel)] };
}

/**
 * Every entry against the one it stands on, the ladder from the baseline to the last kept entry, and the day's
 * drift, all from the session's pulls together.
 *
 * @param band  engine speeds to average over [rad/s]; null is all that both sides cover
 */
export function sessionLedger(
  session: Session,
  pulls: readonly EntryPulls[],
  band: Band | null,
): LedgerTable {
  const pullsOf = (id: string) => pulls.find((p) => p.id === id);
  const entries = session.ledger.map((entry) => ({
    id: entry.id,
    repeats: pullsOf(entry.id)?.repeats ?? null,
    pulls: pullsOf(entry.id)?.pulls ?? [],
    against: entryBefore(session, entry.id)?.id ?? null,
    declared: declaredChange(entry),
    isKept: entry.state === 'kept',
  }));
  const table = judgeSession(entries, {
    margin: session.limits.margin_percent / 100,
    band_rad_s: band,
    prior: priorOf(session),
  });
  return {
    ...table,
    lines: table.lines.map((line) => ({ ...line, peak: entryPeak(pullsOf(line.entryId)?.pulls ?? []) })),
  };
}
