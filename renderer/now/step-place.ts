import type { NextStep } from '../../core/ladder/index.ts';
import type { Entry } from '../../core/session/index.ts';

/**
 * Which step of the ladder this is, counting the changes that stand and those still planned; the baseline and an
 * entry driven again are no steps.
 *
 * @returns  null where no step is on, as before the baseline and at the end
 */
export function stepPlace(
  {
    kind,
    step,
    ladder,
  }: Pick<NextStep, 'kind' | 'step'> & {
    readonly ladder: { readonly steps: readonly { readonly kind: string }[] };
  },
  ledger: readonly Pick<Entry, 'kind' | 'state'>[],
): { readonly number: number; readonly of: number } | null {
  const isStep = (one: { readonly kind: string }) => one.kind !== 'baseline' && one.kind !== 'nothing';
  const made = ledger.filter((e) => e.state === 'kept' && isStep(e)).length;
  const left = ladder.steps.filter(isStep).length;
  const of = made + left;
  // A change that was made is on until it is judged; then the next one is.
  if (kind === 'review-fit' || (kind === 'make-step' && step && isStep(step)))
    return { number: made + 1, of };
  const isOn =
    kind === 'more-pulls' || kind === 'drive-again' || kind === 'go-back' || kind === 'mend-the-spray';
  return isOn && made > 0 ? { number: made, of } : null;
}
