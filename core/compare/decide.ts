import {
  detectableShift,
  intervalOf,
  mixtureCdf,
  powerOfEquivalence,
  powerOfT,
  type TMixture,
} from './statistics/index.ts';
import type { VerdictKind } from './verdict.ts';

/** What decides: after minus before as a logarithm of power, with how sure it is. */
export type Effect = {
  readonly difference: number;
  /** What each story of the day says of it, with its chance. */
  readonly stories: TMixture;
  /** Of the one t with as wide an interval. */
  readonly variance: number;
  readonly degrees: number;
  /** Variance of one pull. */
  readonly pullVariance: number;
  /** The part of `variance` from holding nuisances equal; more pulls tell more of them. */
  readonly nuisance: number;
  /** The part that no pull shrinks. */
  readonly lasting: number;
  readonly pulls: readonly [number, number];
};

export type Decision = {
  readonly kind: Exclude<VerdictKind, 'not-comparable'>;
  /** Logarithms of power. */
  readonly interval95: readonly [number, number];
  /** Of the statement that was made: of no difference, or of a difference beyond the margin. */
  readonly p: number;
  readonly smallestSeen: number;
  readonly morePulls: number | null;
  readonly isSmallButReal: boolean;
};

/**
 * Gain, loss, equivalent or undecided.
 *
 * Equivalent comes first: where both one-sided tests put the effect inside the user's margin, a difference that
 * is also proven is too small to matter by the user's own word, and is said beside.
 */
export function decide(effect: Effect, margin: number): Decision {
  const { stories } = effect;
  const interval95 = intervalOf(stories);
  const beyond = Math.max(
    mixtureCdf(stories, Math.log1p(-margin)),
    1 - mixtureCdf(stories, Math.log1p(margin)),
  );
  const inside = beyond < 0.05;
  const isProven = interval95[0] > 0 || interval95[1] < 0;
  const kind = inside ? 'equivalent' : isProven ? (effect.difference > 0 ? 'gain' : 'loss') : 'undecided';
  return {
    kind,
    interval95,
    p: inside ? beyond : twoSidedP(effect),
    smallestSeen: detectableShift(effect.degrees) * Math.sqrt(effect.variance),
    morePulls: kind === 'undecided' ? morePulls(effect, margin) : null,
    isSmallButReal: inside && isProven,
  };
}

/** Beyond this the answer is that pulls alone won't tell. */
const mostPulls = 200;
/** Chance in which the further pulls should decide. */
const wantedChance = 0.8;

/**
 * Fewest further pulls on each side after which, were the effect truly as large as it looks now, a gain, a loss
 * or equivalence would be proven in four cases of five. Null where more would be needed than anyone drives.
 */
export function morePulls(effect: Effect, margin: number): number | null {
  const decides = (more: number) => chanceToDecide(effect, margin, more) >= wantedChance;
  if (!decides(mostPulls)) return null;
  let low = 0;
  let high = mostPulls;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (decides(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function chanceToDecide(effect: Effect, margin: number, more: number): number {
  const [b, a] = effect.pulls;
  const nuisance = (effect.nuisance * (a + b)) / (a + b + 2 * more);
  const ofPulls = effect.pullVariance * (1 / (b + more) + 1 / (a + more));
  const error = Math.sqrt(ofPulls + nuisance + effect.lasting);
  const degrees = effect.degrees + 2 * more;
  const shift = effect.difference / error;
  return Math.max(
    powerOfT(shift, degrees),
    powerOfEquivalence({ shift, margin: Math.log1p(margin) / error }, degrees),
  );
}

function twoSidedP({ stories, difference, variance }: Effect): number {
  if (variance === 0) return difference === 0 ? 1 : 0;
  const below = mixtureCdf(stories, 0);
  return Math.min(1, 2 * Math.min(below, 1 - below));
}
