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

/** 32-bit FNV-1a of a text, from a starting value; the last mixing spreads the final letters as well. */
function hash(text: string, start: number): number {
  let state = start;
  for (let i = 0; i < text.length; i++) state = Math.imul(state ^ text.charCodeAt(i), 0x01000193);
  state = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
  state = Math.imul(state ^ (state >>> 13), 0xc2b2ae35);
  return (state ^ (state >>> 16)) >>> 0;
}

/** One stream: xoshiro128** (Blackman and Vigna), whose 128 bits of state keep the streams from overlapping. */
export function randomOf(seed: number, label: string): Random {
  const text = `${seed}/${label}`;
  let [a, b, c, d] = [hash(text, 0x811c9dc5), hash(text, 0x9e3779b9), hash(text, 0x7f4a7c15), 1];
  const turn = (x: number, by: number) => (x << by) | (x >>> (32 - by));
  const uniform = () => {
    const drawn = Math.imul(turn(Math.imul(b, 5), 7), 9) >>> 0;
    const kept = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= kept;
    d = turn(d, 11);
    return drawn / 4294967296;
  };
  for (let i = 0; i < 16; i++) uniform();
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
