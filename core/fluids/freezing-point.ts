import { alcoholShare, type Mix } from './mix.ts';
import type { AlcoholId } from './substance.ts';

/** First ice, in C, at 0, 10 ... 60 % of alcohol by mass. */
const firstIce: { readonly [A in AlcoholId]: readonly number[] } = {
  methanol: [0, -6.6, -15.02, -25.91, -38.6, -54.5, -74.5],
  ethanol: [0, -4.47, -10.92, -20.47, -29.26, -37.67, -44.93],
};
const step = 0.1;

/** Cubic between the points that never overshoots them (Fritsch and Butland 1984). */
function monotone(points: readonly number[], at: number): number {
  const last = points.length - 1;
  const i = Math.min(last - 1, Math.floor(at / step));
  const y = (k: number) => points[k] ?? 0;
  const secant = (k: number) => (y(k + 1) - y(k)) / step;
  const slope = (k: number) => {
    if (k === 0) return secant(0);
    if (k === last) return secant(last - 1);
    const [left, right] = [secant(k - 1), secant(k)];
    return left * right <= 0 ? 0 : (2 * left * right) / (left + right);
  };
  const s = at / step - i;
  const h00 = (1 + 2 * s) * (1 - s) ** 2;
  const h10 = s * (1 - s) ** 2;
  const h01 = s * s * (3 - 2 * s);
  const h11 = s * s * (s - 1);
  return h00 * y(i) + h10 * step * slope(i) + h01 * y(i + 1) + h11 * step * slope(i + 1);
}

export type FreezingPoint = {
  /** First ice [K]. */
  readonly temperature: number;
  /** The table ends at 60 % by mass: it freezes somewhere below this. */
  readonly isUpperLimit: boolean;
};

/**
 * Temperature of first ice.
 *
 * Valid:  0 to 60 % alcohol by mass; published ethanol values differ by up to 1.6 K, with both alcohols in one
 *         mix the two tables are shared by mass (estimate).
 * Source: CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions.
 * Check:  30 % methanol by mass: -25.9 C.
 */
export function freezingPoint(mix: Mix): FreezingPoint {
  const alcohol = alcoholShare(mix);
  if (alcohol === 0) return { temperature: 273.15, isUpperLimit: false };
  const methanolPart = mix.massShares.methanol / alcohol;
  const at = Math.min(0.6, alcohol);
  const celsius =
    methanolPart * monotone(firstIce.methanol, at) + (1 - methanolPart) * monotone(firstIce.ethanol, at);
  return { temperature: celsius + 273.15, isUpperLimit: alcohol > 0.6 };
}
