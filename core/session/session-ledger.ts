import { type EntryPulls, judge, type Verdict } from '../compare/index.ts';
import { declaredChange } from './declared-change.ts';
import { entryBefore } from './edit.ts';
import { type EntryLevel, type EntryPeak, entryLevel, entryPeak } from './entry-level.ts';
import type { Session } from './session.ts';

type Band = readonly [number, number];

/** One line of the ledger as computed. */
export type LedgerResult = {
  readonly entryId: string;
  readonly againstId: string | null;
  readonly pulls: number;
  readonly level: EntryLevel | null;
  readonly peak: EntryPeak | null;
  /** Null for the baseline and where either side has no pulls. */
  readonly verdict: Verdict | null;
};

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
  return judge({
    before: pullsOf(pair.beforeId),
    after: pullsOf(pair.afterId),
    session: pulls,
    declared: isOneStep && after ? declaredChange(after) : null,
    margin: session.limits.margin_percent / 100,
    band_rad_s: band,
  });
}

/** The engine speeds that every pull of the session covers; null where they share none. */
export function sessionBand(pulls: readonly EntryPulls[]): Band | null {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const { power } of pulls.flatMap((e) => e.pulls)) {
    low = Math.max(low, power.engineSpeed_rad_s[0] ?? low);
    high = Math.min(high, power.engineSpeed_rad_s.at(-1) ?? high);
  }
  return Number.isFinite(low) && Number.isFinite(high) && high > low ? [low, high] : null;
}

/** Every entry against the one it is judged by, and its level over the band that all of them share. */
export function sessionLedger(
  session: Session,
  pulls: readonly EntryPulls[],
  band: Band | null,
): LedgerResult[] {
  const common = band ?? sessionBand(pulls);
  return session.ledger.map((entry): LedgerResult => {
    const own = pulls.find((p) => p.id === entry.id)?.pulls ?? [];
    const against = entryBefore(session, entry.id);
    const earlier = against ? (pulls.find((p) => p.id === against.id)?.pulls ?? []) : [];
    const isDriven = against !== null && own.length > 0 && earlier.length > 0;
    return {
      entryId: entry.id,
      againstId: against?.id ?? null,
      pulls: own.length,
      level: common && own.length > 0 ? entryLevel(own, common) : null,
      peak: own.length > 0 ? entryPeak(own) : null,
      verdict: isDriven
        ? judgeEntries(session, pulls, { beforeId: against.id, afterId: entry.id }, band)
        : null,
    };
  });
}
