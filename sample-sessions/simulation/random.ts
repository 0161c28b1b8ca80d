/**
 * Seeded chance. Every stream is made from the story's seed and a label of its own, so that a channel or a pull
 * added later does not reshuffle the others.
 */
export type Random = {
  /** Uniform in [0, 1). */
  readonly uniform: () => number;
  /** Normal with mean 0 and deviation 1. */
  readonly normal: () => number;
};

/** 32-bit FNV-1a, to turn a label into a starting state. */
function hash(text: string): number {
  let state = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    state = Math.imul(state ^ text.charCodeAt(i), 0x01000193);
  }
  return state >>> 0;
}

/** One stream: the 32-bit mulberry generator, good enough for noise and the same on every machine. */
export function randomOf(seed: number, label: string): Random {
  let state = hash(`${seed}/${label}`);
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  // Twelve uniforms less six: deviation 1, no logarithm, bounded at six deviations.
  const normal = () => {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += uniform();
    return sum;
  };
  return { uniform, normal };
}

/** A wandering value (first-order noise) with the given deviation and memory [s], stepped by dt [s]. */
export function wander(random: Random, deviation: number, memory: number): (dt: number) => number {
  let value = deviation * random.normal();
  return (dt) => {
    const keep = Math.exp(-dt / memory);
    value = value * keep + deviation * Math.sqrt(1 - keep * keep) * random.normal();
    return value;
  };
}
