import { squaresAboutMean } from './summary.ts';

/** Variance inside groups, pooled: one-way analysis of variance without its F. Groups of one add nothing. */
export function pooledVariance(groups: readonly ArrayLike<number>[]): {
  readonly variance: number;
  readonly degrees: number;
} {
  let squares = 0;
  let degrees = 0;
  for (const group of groups) {
    if (group.length < 2) continue;
    squares += squaresAboutMean(group);
    degrees += group.length - 1;
  }
  return { variance: squares / degrees, degrees };
}
