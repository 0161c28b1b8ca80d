import { type ReactNode, useEffect, useState } from 'react';
import { LeaveQuestion } from './LeaveQuestion.tsx';
import { guardTyped } from './leave-guard.ts';

export type Leaving = {
  /** Closes, or asks first. */
  readonly leave: () => void;
  /** Stands where it is asked; null where it is not. */
  readonly question: ReactNode;
};

const nothingMore = () => {};

/**
 * Ways out of what is typed in, but for the button that keeps it.
 *
 * @param isUnsaved  there is something that would be lost
 * @param onClose    closes without asking
 */
export function useLeave(isUnsaved: boolean, onClose: () => void): Leaving {
  /** What is done once it is closed; null while nothing is asked. */
  const [goOn, setGoOn] = useState<(() => void) | null>(null);
  useEffect(() => (isUnsaved ? guardTyped((next) => setGoOn(() => next)) : undefined), [isUnsaved]);
  return {
    leave: () => (isUnsaved ? setGoOn(() => nothingMore) : onClose()),
    question: goOn && (
      <LeaveQuestion
        onStay={() => setGoOn(null)}
        onLeave={() => {
          onClose();
          goOn();
        }}
      />
    ),
  };
}
