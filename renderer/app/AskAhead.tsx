import { useLedger } from '../hooks/use-ledger.ts';
import { useSelection } from '../hooks/use-selection.ts';
import { useVerdict } from '../hooks/use-verdict.ts';

/**
 * Asks for the verdict that the bench is going to show while its screen is still being drawn behind the paint; the
 * parts of the screen that ask for the same share the answer.
 */
export function AskAhead() {
  const { before, after } = useSelection();
  useVerdict(before?.id ?? null, after?.id ?? null);
  useLedger();
  return null;
}
