import type { PullSummary } from '../../core/contract/index.ts';
import type { ScreenWords } from '../../core/words/index.ts';

/**
 * What was decided about a pull by hand, in the order in which it matters: why it is out now, why its ends were moved,
 * and why it was left out and taken back in before.
 */
export function handRemarks(
  { droppedBecause, trimmedBecause, decisions }: PullSummary,
  said: ScreenWords['bench'],
): string[] {
  const past = droppedBecause === null ? decisions : decisions.slice(0, -1);
  return [
    droppedBecause ?? '',
    trimmedBecause === null ? '' : said.trimmed(trimmedBecause),
    ...past.map(({ action, reason }, i) => {
      if (action === 'drop') return said.wasDropped(reason);
      return past[i - 1]?.action === 'drop' ? said.takenBack(reason) : said.countedByHand(reason);
    }),
  ];
}
