import { type DifferenceCurve, type EntryPulls, provenRanges, type Verdict } from '../../compare/index.ts';
import { type Plan, planOf } from '../../injection/index.ts';
import type { Note } from '../../result/index.ts';
import {
  type Entry,
  judgeEntries,
  type LedgerTable,
  type Session,
  sessionLedger,
} from '../../session/index.ts';

/** The first measurement against the car as left. */
export type WholeDay = {
  readonly beforeId: string;
  readonly afterId: string;
  readonly curve: DifferenceCurve | null;
  /** What stood otherwise on the two sides beside the tuner's changes; with one of them nothing is called proven. */
  readonly doubts: readonly Note[];
};

/** What a summary is made from: the session as computed, once. */
export type HandoverSource = {
  readonly session: Session;
  readonly pulls: readonly EntryPulls[];
  readonly ledger: LedgerTable;
  /** The first measurement against the car as left; null where there are not two measured states. */
  readonly whole: WholeDay | null;
  /** Null where the setup is empty or lacks what a plan needs. */
  readonly plan: Plan | null;
  /** The last kept entry that was driven; null where none was. */
  readonly last: Entry | null;
};

export function handoverSource(session: Session, pulls: readonly EntryPulls[]): HandoverSource {
  const ledger = sessionLedger(session, pulls, null);
  const { ladder } = ledger;
  const ends = ladder && { beforeId: ladder.fromId, afterId: ladder.toId };
  const plan = session.setup === null ? null : planOf(session.setup);
  const isDriven = (id: string) => (pulls.find((p) => p.id === id)?.pulls.length ?? 0) > 0;
  return {
    session,
    pulls,
    ledger,
    whole: ends && { ...ends, ...wholeCurve(judgeEntries(session, pulls, ends, null)) },
    plan: plan?.ok ? plan.value : null,
    last: session.ledger.findLast((e) => e.state === 'kept' && isDriven(e.id)) ?? null,
  };
}

/**
 * A verdict proves nothing where several things moved, since nobody can say which of them did it. How far the car
 * now stands from where it began asks for no cause, so here the band proves it all the same; every other reason holds.
 */
function wholeCurve({ kind, curve, reasons }: Verdict): Pick<WholeDay, 'curve' | 'doubts'> {
  if (kind !== 'not-comparable') return { curve, doubts: [] };
  const doubts = reasons.filter((r) => r.code !== 'compare/more-than-one');
  if (!curve || doubts.length > 0) return { curve, doubts };
  return { curve: { ...curve, proven: provenRanges(curve.low, curve.high) }, doubts };
}

/** Place of an entry in the ledger, as it is printed. */
export function numberOf(session: Session, entryId: string): number {
  return session.ledger.findIndex((e) => e.id === entryId);
}
