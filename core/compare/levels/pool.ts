import { fCdf, pooledVariance } from '../statistics/index.ts';

/** A group of levels that share a setup and were driven in one go. */
export type Group = { readonly levels: readonly number[]; readonly isJudged: boolean };

export type Pool = {
  /** Which groups' scatter is taken together. */
  readonly taken: readonly boolean[];
  /** Deviations where the judged pair scatters beyond the session and stands alone; else null. */
  readonly standsAlone: { readonly own: number; readonly session: number } | null;
};

/**
 * Whose pulls tell the repeatability of the two entries judged.
 *
 * A group of the session that scatters far beyond the rest is no measure of the others (Cochran's idea, 1 %).
 * Where the judged pair itself scatters beyond the session (1 %, one-sided) it is judged on its own scatter
 * alone: pooling would make it look better than it was driven.
 *
 * Source: ISO 5725-2, section 7.3.3, for the first; variance ratio by F for both.
 */
export function poolOf(groups: readonly Group[]): Pool {
  const taken = groups.map((g) => g.isJudged || g.levels.length > 1);
  const others = groups.filter((g) => !g.isJudged && g.levels.length > 1).length;
  for (let round = 0; round < others; round++) {
    let worst = -1;
    let least = 1;
    groups.forEach((group, i) => {
      if (group.isJudged || !taken[i]) return;
      const rest = pooledVariance(groups.filter((_, j) => j !== i && taken[j]).map((g) => g.levels));
      const p = above(pooledVariance([group.levels]), rest);
      if (p < least) {
        least = p;
        worst = i;
      }
    });
    if (worst < 0 || least * others >= 0.01) break;
    taken[worst] = false;
  }
  const own = pooledVariance(groups.filter((g) => g.isJudged).map((g) => g.levels));
  const session = pooledVariance(groups.filter((g, i) => !g.isJudged && taken[i]).map((g) => g.levels));
  if (own.degrees > 0 && session.degrees > 0 && above(own, session) < 0.01) {
    return {
      taken: groups.map((g) => g.isJudged),
      standsAlone: { own: Math.sqrt(own.variance), session: Math.sqrt(session.variance) },
    };
  }
  return { taken, standsAlone: null };
}

type Estimate = { readonly variance: number; readonly degrees: number };

/** Chance that one true variance shows a ratio as large as this; 1 where nothing can be said. */
export function above(one: Estimate, other: Estimate): number {
  if (!(one.degrees > 0 && other.degrees > 0 && other.variance > 0)) return 1;
  return 1 - fCdf(one.variance / other.variance, [one.degrees, other.degrees]);
}
