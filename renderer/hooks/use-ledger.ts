import { useView } from '../app/view.tsx';
import { ledgerQuestion } from './questions.ts';
import { useAnswer } from './use-answer.ts';
import { useSession } from './use-session.tsx';

/** Effects and verdicts of all entries. */
export function useLedger() {
  const { snapshot } = useSession();
  return useAnswer(...ledgerQuestion(snapshot, useView().band));
}
