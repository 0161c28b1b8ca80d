import type { EntryPulls, Verdict } from '../compare/index.ts';
import {
  type LadderEntry,
  type LadderInput,
  type LadderPlace,
  ladderLimits,
  measuredOf,
  type Today,
} from '../ladder/index.ts';
import { fail, ok, type Result } from '../result/index.ts';
import { declaredChange } from './declared-change.ts';
import type { Session } from './session.ts';

/** What the ladder needs besides the session itself. */
export type LadderSources = {
  readonly pulls: readonly EntryPulls[];
  /** By entry; as sessionLedger answers them. */
  readonly verdicts: readonly { readonly entryId: string; readonly verdict: Verdict | null }[];
  /** Null is where the session's conditions say its pulls are driven. */
  readonly place?: LadderPlace | null;
  readonly today?: Today;
};

/**
 * The ladder's question from a session: setup, limits, and the ledger with what its pulls measured.
 *
 * Errors: session/no-setup where the setup sheet was never filled in.
 */
export function sessionLadder(session: Session, sources: LadderSources): Result<LadderInput> {
  const { setup } = session;
  if (setup === null) return fail({ code: 'session/no-setup', facts: {} });
  const ledger: LadderEntry[] = session.ledger.map((entry) => {
    const declared = declaredChange(entry);
    return {
      id: entry.id,
      kind: entry.kind,
      from: declared?.from ?? null,
      to: declared?.to ?? null,
      state: entry.state,
      verdict: sources.verdicts.find((v) => v.entryId === entry.id)?.verdict ?? null,
      measured: measuredOf(sources.pulls.find((p) => p.id === entry.id)?.pulls ?? []),
    };
  });
  return ok({
    setup,
    limits: ladderLimits(session.limits),
    ledger,
    place: sources.place ?? (session.conditions.place === 'dyno' ? 'dyno' : 'street'),
    ...(sources.today ? { today: sources.today } : {}),
  });
}
