import { seeded } from './random.ts';

/** Seeded decisions, for tests that try many ways. */
export type Chance = {
  /** 0 up to 1, without 1. */
  readonly share: () => number;
  /** Whole number from `from` up to `to`, both included. */
  readonly int: (from: number, to: number) => number;
  readonly pick: <T>(list: readonly [T, ...T[]]) => T;
};

export function chanceFrom(seed: number): Chance {
  const share = seeded(seed);
  const int = (from: number, to: number) => from + Math.floor(share() * (to - from + 1));
  return { share, int, pick: (list) => list[int(0, list.length - 1)] ?? list[0] };
}
