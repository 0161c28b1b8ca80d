import { startTransition, useOptimistic } from 'react';

/**
 * What the host keeps, with the changes made here that it has not answered yet: a control follows its key or click at
 * once, and a second one that comes before the answer is made of the first. A change that the host refuses goes again.
 *
 * @param kept      what the newest answer holds
 * @param withOne   the value with one change more
 * @returns         the value to show, and what shows a change while `keep` sends it; resolves as `keep` does
 */
export function useAhead<T, C>(
  kept: T,
  withOne: (value: T, change: C) => T,
): readonly [value: T, put: (change: C, keep: () => Promise<boolean>) => Promise<boolean>] {
  const [value, showAhead] = useOptimistic(kept, withOne);
  const put = (change: C, keep: () => Promise<boolean>) =>
    new Promise<boolean>((resolve, reject) => {
      startTransition(async () => {
        showAhead(change);
        await keep().then(resolve, reject);
      });
    });
  return [value, put];
}
