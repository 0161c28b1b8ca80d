import { useEffect, useRef, useState } from 'react';

/**
 * Fills the screen while the view stands and gives it back after. The browser keeps its own key for leaving full
 * screen to itself, so leaving it by that key leaves the view.
 *
 * @returns  whether the browser, or what locks it down, refused
 */
export function useFullScreen(onLeft: () => void): boolean {
  const [isRefused, setRefused] = useState(false);
  const latest = useRef(onLeft);
  useEffect(() => {
    latest.current = onLeft;
  });
  useEffect(() => {
    let isOver = false;
    let isOurs = false;
    const giveBack = () => {
      isOurs = false;
      if (document.fullscreenElement) document.exitFullscreen().catch(() => undefined);
    };
    const take = async () => {
      // Filled already by the person's own hand: theirs to give back.
      if (document.fullscreenElement) return;
      try {
        await document.documentElement.requestFullscreen({ navigationUI: 'hide' });
        isOurs = true;
        if (isOver) giveBack();
      } catch {
        if (!isOver) setRefused(true);
      }
    };
    const onChange = () => {
      if (!isOurs || document.fullscreenElement) return;
      isOurs = false;
      latest.current();
    };
    document.addEventListener('fullscreenchange', onChange);
    void take();
    return () => {
      isOver = true;
      document.removeEventListener('fullscreenchange', onChange);
      if (isOurs) giveBack();
    };
  }, []);
  return isRefused;
}
