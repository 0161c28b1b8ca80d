import { useEffect, useRef, useState } from 'react';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { playCue } from './cue.ts';
import { type Seen, type Wake, wakesBetween } from './wakes.ts';

export type Aloud = {
  /** What is said to a screen reader. */
  readonly said: string;
  /** Sound is on, and the browser lets none out. */
  readonly isMute: boolean;
};

/** What is said aloud, and heard where sound is on; `seen` null while the answers are on their way. */
export function useWakes(seen: Seen | null, say: (wake: Wake) => string): Aloud {
  const { rideSound } = usePreferences().preferences;
  const before = useRef<Seen | null>(null);
  const latest = useRef({ say, rideSound });
  const [said, setSaid] = useState('');
  const [isMute, setMute] = useState(false);
  useEffect(() => {
    latest.current = { say, rideSound };
  });
  useEffect(() => {
    if (!seen) return;
    const wakes = wakesBetween(before.current, seen);
    before.current = seen;
    const [first] = wakes;
    if (!first) return;
    setSaid(wakes.map(latest.current.say).join(' '));
    if (latest.current.rideSound) setMute(!playCue(first.cue));
  }, [seen]);
  return { said, isMute: isMute && rideSound };
}
