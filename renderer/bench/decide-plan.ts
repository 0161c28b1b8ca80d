import type { VerdictWire } from '../../core/contract/index.ts';

/** What would decide: pulls in a number, something other than pulls, a cause to mend first, or nothing more. */
export type DecidePlan = 'pulls' | 'not-by-pulls' | 'mend-first' | 'settled';

export function decidePlan(verdict: Pick<VerdictWire, 'kind' | 'morePulls'>): DecidePlan {
  if (verdict.kind === 'not-comparable') return 'mend-first';
  if (verdict.kind !== 'undecided') return 'settled';
  return verdict.morePulls === null ? 'not-by-pulls' : 'pulls';
}
