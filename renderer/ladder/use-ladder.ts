import { useMemo } from 'react';
import { type Ladder, type LadderPlace, type NextStep, nextOf, planLadder } from '../../core/ladder/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import { measuredLadder } from '../../core/session/index.ts';
import { useLedger } from '../hooks/use-ledger.ts';
import { useSession } from '../hooks/use-session.tsx';
import { type SheetDoc, setupOf } from '../sheets/sheet-doc.ts';

export type LadderNow = { readonly ladder: Ladder; readonly next: NextStep };

/** The ladder of what is typed now, from what the ledger's pulls measured; null while these are worked out. */
export function useLadder(doc: SheetDoc, place: LadderPlace): Result<LadderNow> | null {
  const { snapshot } = useSession();
  const ledger = useLedger();
  const session = snapshot?.session ?? null;
  const { value, problems } = ledger;
  return useMemo(() => {
    if (!session) return null;
    if (!value) return problems ? { ok: false as const, problems } : null;
    const typed = { ...session, setup: session.setup && setupOf(doc), limits: doc.limits };
    const input = measuredLadder(typed, { measured: value.lines, verdicts: value.lines, place });
    if (!input.ok) return input;
    const ladder = planLadder(input.value);
    return ladder.ok ? ok({ ladder: ladder.value, next: nextOf(ladder.value) }) : ladder;
  }, [session, value, problems, doc, place]);
}
