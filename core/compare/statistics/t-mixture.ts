import { crossing } from './root.ts';
import { tCdf, tQuantile } from './student-t.ts';

/** One answer with its Student's t about it, and how much it counts. */
export type TPart = {
  /** Shares that add up to one over all parts. */
  readonly weight: number;
  readonly centre: number;
  readonly scale: number;
  readonly degrees: number;
};

/** Several answers to one question, none of them sure: where the true value lies, as a sum of their t's. */
export type TMixture = readonly TPart[];

/** Chance that the true value lies at or below x. Check: one part is Student's t. */
export function mixtureCdf(parts: TMixture, x: number): number {
  return parts.reduce((sum, { weight, centre, scale, degrees }) => {
    const below = scale > 0 ? tCdf((x - centre) / scale, degrees) : x >= centre ? 1 : 0;
    return sum + weight * below;
  }, 0);
}

/**
 * Value below which the true one lies with chance p.
 *
 * Where the answers agree it is that of one t; where they differ the sum has shoulders, and its quantiles are nearer
 * than those of one t with the same variance.
 *
 * Check: halves N(-1, 0.01) and N(1, 0.01) have their 0.25 quantile at -1.
 */
export function mixtureQuantile(parts: TMixture, p: number): number {
  const quantiles = new Map<number, number>();
  const quantile = (degrees: number) => {
    const known = quantiles.get(degrees) ?? tQuantile(p, degrees);
    quantiles.set(degrees, known);
    return known;
  };
  const each = parts.map(({ centre, scale, degrees }) => centre + scale * quantile(degrees));
  const low = Math.min(...each);
  const high = Math.max(...each);
  // The sum can't be at p before the first of its parts, nor after the last.
  return high - low < 1e-12 * Math.max(Math.abs(low), Math.abs(high))
    ? (low + high) / 2
    : crossing((x) => mixtureCdf(parts, x), p, { low, high });
}

/** Interval that holds the true value with the given confidence, as often missed below as above. */
export function intervalOf(parts: TMixture, confidence = 0.95): readonly [number, number] {
  return [mixtureQuantile(parts, (1 - confidence) / 2), mixtureQuantile(parts, (1 + confidence) / 2)];
}
