import type { EntryPulls } from '../../compare/index.ts';
import { type Plan, planOf } from '../../injection/index.ts';
import {
  type Entry,
  judgeEntries,
  type LedgerTable,
  type Session,
  sessionLedger,
} from '../../session/index.ts';
import { type WholeDay, wholeCurve } from './whole-day.ts';

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

/** Computes a session once for everything that its summary tells. */
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

/** Place of an entry in the ledger, as it is printed. */
export function numberOf(session: Session, entryId: string): number {
  return session.ledger.findIndex((e) => e.id === entryId);
}
