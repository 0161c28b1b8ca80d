/** Seeded random numbers for tests: the same seed gives the same log on every machine. */
export type Random = {
  /** Even in [0, 1). */
  next(): number;
  between(low: number, high: number): number;
  int(low: number, high: number): number;
  pick<T>(list: readonly T[]): T;
  chance(share: number): boolean;
  /** Mean 0, standard deviation 1. */
  normal(): number;
};

/** Mulberry32, a public-domain 32-bit generator. */
export function createRandom(seed: number): Random {
  let state = (seed * 2654435761) >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    int: (low, high) => low + Math.floor((high - low + 1) * next()),
    pick: <T>(list: readonly T[]) => list[Math.floor(next() * list.length)] as T,
    chance: (share) => next() < share,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
