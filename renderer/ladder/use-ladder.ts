import { useDeferredValue, useMemo } from 'react';
import { type Ladder, type LadderPlace, type NextStep, nextOf, planLadder } from '../../core/ladder/index.ts';
import { ok, type Problems, type Result } from '../../core/result/index.ts';
import { measuredLadder, type Session } from '../../core/session/index.ts';
import { isDrawnOnce } from '../hooks/drawn-once.ts';
import type { Answer } from '../hooks/use-answer.ts';
import { useLedger } from '../hooks/use-ledger.ts';
import { useSession } from '../hooks/use-session.tsx';
import { type SheetDoc, setupOf } from '../sheets/sheet-doc.ts';

export type LadderNow = { readonly ladder: Ladder; readonly next: NextStep };

type Asked = {
  readonly session: Session | null;
  readonly value: Answer<'ledger.get'>['value'];
  readonly problems: Problems | null;
  readonly doc: SheetDoc;
  readonly place: LadderPlace;
};

/**
 * The ladder of what is typed now, from what the ledger's pulls measured; null while these are worked out. It is
 * planned behind the paint of what asked for it: that takes longer than a frame.
 */
export function useLadder(doc: SheetDoc, place: LadderPlace): Result<LadderNow> | null {
  const { snapshot } = useSession();
  const { value, problems } = useLedger();
  const session = snapshot?.session ?? null;
  const asked = useMemo(
    () => ({ session, value, problems, doc, place }),
    [session, value, problems, doc, place],
  );
  const answered = useDeferredValue<Asked | null>(asked, isDrawnOnce ? asked : null);
  return useMemo(() => answered && ladderOf(answered), [answered]);
}

function ladderOf({ session, value, problems, doc, place }: Asked): Result<LadderNow> | null {
  if (!session) return null;
  if (!value) return problems ? { ok: false, problems } : null;
  const typed = { ...session, setup: session.setup && setupOf(doc), limits: doc.limits };
  const input = measuredLadder(typed, { measured: value.lines, verdicts: value.lines, place });
  if (!input.ok) return input;
  const ladder = planLadder(input.value);
  return ladder.ok ? ok({ ladder: ladder.value, next: nextOf(ladder.value) }) : ladder;
}
