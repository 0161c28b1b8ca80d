/**
 * Holm's step-down adjustment: p values that may be held against one common level. A statement is made where
 * the adjusted value is strictly below it.
 *
 * Source: Holm, Scand. J. Statist. 6 (1979) 65.
 * Check:  0.01, 0.04, 0.03, 0.005 become 0.03, 0.06, 0.06, 0.02.
 */
export function holm(p: readonly number[]): number[] {
  const order = p.map((_, i) => i).sort((a, b) => (p[a] as number) - (p[b] as number));
  const adjusted = new Array<number>(p.length);
  let least = 0;
  order.forEach((index, rank) => {
    least = Math.max(least, Math.min(1, (p.length - rank) * (p[index] as number)));
    adjusted[index] = least;
  });
  return adjusted;
}
