import { useRef } from 'react';

/**
 * What adds something when it is done: while it is on its way, a second key or click asks for nothing more.
 *
 * @param run  resolves when it is done
 */
export function useOnce(run: () => Promise<unknown>): () => Promise<void> {
  const isRunning = useRef(false);
  return async () => {
    if (isRunning.current) return;
    isRunning.current = true;
    try {
      await run();
    } finally {
      isRunning.current = false;
    }
  };
}
