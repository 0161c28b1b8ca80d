import type { Ledger, LedgerLine, Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';

/** Pulls that a baseline needs before anything is held against it (common practice: three or more). */
const baselinePulls = 3;
/** After so many changes an earlier entry is driven again: if it moved, the day moved (common practice). */
const entriesBetweenChecks = 4;

/** The one thing to do now. `entry` is the one it is about. */
export type Step =
  | { readonly kind: 'baseline' | 'change' | 'next' | 'again' }
  | { readonly kind: 'baseline-more'; readonly pulls: number; readonly entry: Entry }
  | { readonly kind: 'drive' | 'undecidable' | 'not-comparable' | 'loss'; readonly entry: Entry }
  | { readonly kind: 'more'; readonly pulls: number; readonly entry: Entry };

/**
 * What comes next in a session, from the ledger alone: an open question is closed before a new one is asked.
 * Null while the ledger is not worked out.
 */
export function whatNow(snapshot: Snapshot, ledger: Ledger | null): Step | null {
  const entries = snapshot.session.ledger;
  const baseline = entries[0];
  if (!baseline || baseline.runs.length === 0) return { kind: 'baseline' };
  if (!ledger) return null;
  const lineOf = (entry: Entry): LedgerLine | undefined => ledger.lines.find((l) => l.entryId === entry.id);
  const pulls = lineOf(baseline)?.pulls ?? 0;
  if (pulls < baselinePulls) return { kind: 'baseline-more', pulls: baselinePulls - pulls, entry: baseline };
  const last = entries.findLast((e) => e.state === 'kept');
  if (!last || last === baseline) return { kind: 'change' };
  const verdict = lineOf(last)?.verdict ?? null;
  if (last.runs.length === 0 || !verdict) return { kind: 'drive', entry: last };
  if (verdict.kind === 'not-comparable') return { kind: 'not-comparable', entry: last };
  if (verdict.kind === 'loss' && last.kind !== 'nothing') return { kind: 'loss', entry: last };
  if (verdict.kind === 'undecided') {
    return verdict.morePulls === null
      ? { kind: 'undecidable', entry: last }
      : { kind: 'more', pulls: verdict.morePulls, entry: last };
  }
  const sinceCheck =
    entries.length -
    1 -
    Math.max(
      0,
      entries.findLastIndex((e) => e.kind === 'nothing'),
    );
  if (sinceCheck >= entriesBetweenChecks && last.kind !== 'nothing') return { kind: 'again' };
  return { kind: 'next' };
}
