import { useView } from '../app/view.tsx';
import { verdictQuestion } from './questions.ts';
import { useAnswer } from './use-answer.ts';
import { useSession } from './use-session.tsx';

/** The comparison of two entries; nothing is asked while one of them is missing. */
export function useVerdict(before: string | null, after: string | null) {
  const { snapshot } = useSession();
  return useAnswer(...verdictQuestion(snapshot, before, after, useView().band));
}

/** Power of every pull of these entries. */
export function useCurves(entryIds: readonly string[]) {
  const { snapshot } = useSession();
  const input = snapshot && entryIds.length > 0 ? { entryIds: [...entryIds] } : null;
  return useAnswer('entries.curves', input, snapshot?.revision ?? 0, entryIds.join('>'));
}
