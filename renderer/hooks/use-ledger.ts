import { useView } from '../app/view.tsx';
import { useAnswer } from './use-answer.ts';
import { useSession } from './use-session.tsx';

/** Effects and verdicts of all entries. */
export function useLedger() {
  const { snapshot } = useSession();
  const view = useView();
  const input = snapshot ? { band: view.band && ([...view.band] as [number, number]) } : null;
  return useAnswer('ledger.get', input, snapshot?.revision ?? 0, snapshot?.folder ?? '');
}
