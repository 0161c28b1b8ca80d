import type { EntryPulls } from '../compare/index.ts';
import {
  type LadderEntry,
  type LadderInput,
  type LadderPlace,
  ladderLimits,
  type Measured,
  measuredOf,
  nothingMeasured,
  type SparkTable,
  type Today,
} from '../ladder/index.ts';
import { fail, ok, type Result } from '../result/index.ts';
import { readTable } from '../tables/index.ts';
import { declaredChange } from './declared-change.ts';
import { entryBefore } from './edit.ts';
import type { Session } from './session.ts';

/** What the ladder needs besides the session itself and what was measured. */
export type LadderSources = {
  /** By entry; as sessionLedger answers them. */
  readonly verdicts: readonly { readonly entryId: string; readonly verdict: LadderEntry['verdict'] }[];
  /** Null is where the session's conditions say its pulls are driven. */
  readonly place?: LadderPlace | null;
  readonly today?: Today;
};

/**
 * The ladder's question from a session: setup, limits, and the ledger with what its pulls measured.
 *
 * Errors: session/no-setup where the setup sheet was never filled in.
 */
export function sessionLadder(
  session: Session,
  sources: LadderSources & { readonly pulls: readonly EntryPulls[] },
): Result<LadderInput> {
  const measured = sources.pulls.map(({ id, pulls }) => ({ entryId: id, measured: measuredOf(pulls) }));
  return measuredLadder(session, { ...sources, measured });
}

/** The same where the pulls are elsewhere and only their extremes are at hand, as on a screen. */
export function measuredLadder(
  session: Session,
  sources: LadderSources & {
    readonly measured: readonly { readonly entryId: string; readonly measured: Measured }[];
  },
): Result<LadderInput> {
  const { setup } = session;
  if (setup === null) return fail({ code: 'session/no-setup', facts: {} });
  const ledger: LadderEntry[] = session.ledger.map((entry) => {
    const declared = declaredChange(entry);
    return {
      id: entry.id,
      kind: entry.kind,
      from: declared?.from ?? null,
      to: declared?.to ?? null,
      repeats: entry.kind === 'nothing' ? (entryBefore(session, entry.id)?.id ?? null) : null,
      state: entry.state,
      verdict: sources.verdicts.find((v) => v.entryId === entry.id)?.verdict ?? null,
      measured: sources.measured.find((m) => m.entryId === entry.id)?.measured ?? nothingMeasured,
    };
  });
  return ok({
    setup,
    limits: ladderLimits(session.limits),
    ledger,
    place: sources.place ?? (session.conditions.place === 'dyno' ? 'dyno' : 'street'),
    sparkTable: sparkTableOf(session),
    ...(sources.today ? { today: sources.today } : {}),
  });
}

/** The first spark table of the session; null where none is there or none can be read. */
function sparkTableOf(session: Session): SparkTable | null {
  const found = session.tables.find((t) => t.kind === 'spark');
  const read = found ? readTable(found.now) : null;
  return found && read?.ok ? { name: found.name, table: read.value, axes: found.axes } : null;
}
