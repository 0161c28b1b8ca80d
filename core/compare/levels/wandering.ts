/**
 * No day is quite straight: beside all that is named, its level steps from pull to pull by this share of a pull's own
 * scatter (common practice: 0.1 % a pull where pulls repeat to half a percent).
 */
export const wanderShare = 0.2;

/**
 * How far a weighted sum of pulls wanders: its variance for steps of variance 1 from each place in the order of
 * driving to the next.
 *
 *   K = sum over gaps of (weight behind the gap)^2 x places passed
 *
 * @param order    place of each pull in the order of driving
 * @param weights  one per pull, adding up to zero
 *
 * Source: variance of a sum of independent steps.
 * Check:  n pulls against the next n: (2 n^2 + 1) / (3 n), 3.4 for five.
 */
export function wanderOf(order: Float64Array, weights: ArrayLike<number>): number {
  const places = Array.from(order, (at, i) => ({ at, weight: weights[i] as number })).sort(
    (a, b) => a.at - b.at,
  );
  let behind = 0;
  let sum = 0;
  places.forEach(({ at, weight }, i) => {
    const last = places[i - 1];
    if (last) sum += behind * behind * (at - last.at);
    behind += weight;
  });
  return sum;
}
