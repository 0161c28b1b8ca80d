/** A part of a variance and the degrees of freedom that it was estimated with; Infinity where it is known. */
export type VariancePart = { readonly variance: number; readonly degrees: number };

/**
 * Degrees of freedom of a sum of estimated variances.
 *
 *   nu = (sum v)^2 / sum (v^2 / nu_i)
 *
 * Source: Welch-Satterthwaite, JCGM 100:2008, G.4.1, equation G.2b.
 * Check:  parts 5.8, 3.9, 6.7 nm with 24, 5, 8 degrees give 25.4 (GUM example H.1).
 */
export function satterthwaite(parts: readonly VariancePart[]): VariancePart {
  let sum = 0;
  let weighted = 0;
  for (const part of parts) {
    sum += part.variance;
    weighted += (part.variance * part.variance) / part.degrees;
  }
  return { variance: sum, degrees: weighted === 0 ? Number.POSITIVE_INFINITY : (sum * sum) / weighted };
}
