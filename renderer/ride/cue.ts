export type Cue = 'pull' | 'gate' | 'fluid';

/** Tones of each cue [Hz], one after the other: rising is good news, falling is not. */
const tones: Readonly<Record<Cue, readonly number[]>> = {
  pull: [660, 880],
  gate: [880, 440, 880, 440],
  fluid: [660, 440],
};
const toneLength_s = 0.14;

let context: AudioContext | null = null;

/**
 * Plays a cue, made on the spot.
 *
 * @returns  whether the browser lets sound out at all
 */
export function playCue(cue: Cue): boolean {
  try {
    context ??= new AudioContext();
  } catch {
    return false;
  }
  // Without a touch or a key before it, a browser starts it silent.
  if (context.state === 'suspended') context.resume().catch(() => undefined);
  const { currentTime: now, destination } = context;
  for (const [i, frequency] of tones[cue].entries()) {
    const oscillator = context.createOscillator();
    const gain = context.createGain();
    const start = now + i * toneLength_s;
    oscillator.frequency.value = frequency;
    // Faded at both ends: a tone that is cut clicks.
    gain.gain.setValueAtTime(0, start);
    gain.gain.linearRampToValueAtTime(0.25, start + 0.02);
    gain.gain.linearRampToValueAtTime(0, start + toneLength_s);
    oscillator.connect(gain).connect(destination);
    oscillator.start(start);
    oscillator.stop(start + toneLength_s);
  }
  return true;
}
