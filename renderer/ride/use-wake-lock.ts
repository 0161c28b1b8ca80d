import { useEffect, useState } from 'react';

/**
 * Keeps the screen lit while the view stands. A browser lets go whenever the window is hidden, so it is asked
 * again once the window is back.
 *
 * @returns  whether it is refused: the screen may go dark
 */
export function useWakeLock(): boolean {
  const [isRefused, setRefused] = useState(false);
  useEffect(() => {
    let isOver = false;
    let held: WakeLockSentinel | null = null;
    const letGo = () => held?.release().catch(() => undefined);
    const ask = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        held = await navigator.wakeLock.request('screen');
        if (isOver) await letGo();
        else setRefused(false);
      } catch {
        if (!isOver) setRefused(true);
      }
    };
    const onVisible = () => void ask();
    document.addEventListener('visibilitychange', onVisible);
    void ask();
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', onVisible);
      void letGo();
    };
  }, []);
  return isRefused;
}
