import type { ScreenWords } from '../../core/words/index.ts';
import type { Step } from './what-now.ts';

/** The step as a title and its reason. */
export function stepWords(
  step: Step,
  titleOf: (entry: Extract<Step, { entry: unknown }>['entry']) => string,
  said: ScreenWords['now'],
): { title: string; why: string } {
  switch (step.kind) {
    case 'baseline':
      return said.baseline;
    case 'baseline-more':
      return said.baselineMore(step.pulls);
    case 'change':
      return said.change;
    case 'next':
      return said.next;
    case 'again':
      return said.again;
    case 'drive':
      return said.drive(titleOf(step.entry));
    case 'more':
      return said.more(step.pulls, titleOf(step.entry));
    case 'undecidable':
      return said.undecidable(titleOf(step.entry));
    case 'not-comparable':
      return said.notComparable(titleOf(step.entry));
    case 'loss':
      return said.loss(titleOf(step.entry));
  }
}
