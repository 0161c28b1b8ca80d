import type { Explanation } from '../units/index.ts';

/** Lambda of best power of each part, low and high; all editable. */
export type BestPowerRanges = {
  readonly petrol: readonly [number, number];
  readonly methanol: readonly [number, number];
  readonly ethanol: readonly [number, number];
};

/**
 * Textbook ranges. Petrol: equivalence ratio 1.1 to 1.2, Heywood and Taylor (from memory; web pages quote 0.88 to
 * 0.90). Methanol and ethanol burn well richer: from memory.
 */
export const textbookBestPower: BestPowerRanges = {
  petrol: [0.83, 0.91],
  methanol: [0.77, 0.87],
  ethanol: [0.8, 0.89],
};

/** Share of the air demand that each part takes; they add up to 1. */
export type DemandShares = { readonly petrol: number; readonly methanol: number; readonly ethanol: number };

/**
 * Lambda of best power of a blend, low and high.
 *
 *   lambda = sum s_i lambda_i         s_i share of the air demand
 *
 * Source: the parts as above; that they mix by air demand is an assumption (from memory).
 * Check:  petrol alone gives back its own range.
 */
export function bestPowerLambda(
  shares: DemandShares,
  ranges: BestPowerRanges = textbookBestPower,
): readonly [number, number] {
  const at = (end: 0 | 1) =>
    shares.petrol * ranges.petrol[end] +
    shares.methanol * ranges.methanol[end] +
    shares.ethanol * ranges.ethanol[end];
  return [at(0), at(1)];
}

export function explainBestPower(shares: DemandShares, ranges: BestPowerRanges): Explanation {
  const [low, high] = bestPowerLambda(shares, ranges);
  return {
    id: 'mixture/best-power',
    formula: 'lambda = sum s_i lambda_i',
    tex: String.raw`\lambda_\mathrm{best}=\textstyle\sum s_i\lambda_i`,
    inputs: [
      { symbol: 's petrol', value: shares.petrol, kind: 'share' },
      { symbol: 's methanol', value: shares.methanol, kind: 'share' },
      { symbol: 's ethanol', value: shares.ethanol, kind: 'share' },
      { symbol: 'lambda, low', value: low, kind: 'lambda' },
      { symbol: 'lambda, high', value: high, kind: 'lambda' },
    ],
    source: 'petrol: equivalence ratio 1.1 to 1.2, Heywood and Taylor (from memory); alcohols: from memory',
    validRange: [{ symbol: 'lambda', from: 0.7, to: 0.95, kind: 'lambda' }],
  };
}

/** How sharply power falls beside its best, over lambda squared: ends and middle. */
const sharpness = { low: 2.5, middle: 3.2, high: 4 } as const;

/** A cost of power as a share: what it is taken for, and between what it may lie. */
export type PowerCost = { readonly expected: number; readonly low: number; readonly high: number };

/**
 * Power lost beside the best lambda, on the rich side.
 *
 *   loss = k (lambda_best - lambda)^2
 *
 * @param best  lambda of best power
 *
 * Valid:  lambda 0.70 to best; leaner than best the same form is taken. Spark optimal at each lambda.
 * Source: k from 2.5 (mean effective pressure over equivalence ratio, Heywood ch. 15, from memory) to 4 (heat per kg
 *         of air with water-gas equilibrium, less what more evaporating fuel gives back).
 * Check:  best 0.87: 11.0 on the petrol scale costs 3.7 to 5.9 %, 12.0 costs 0.7 to 1.2 %.
 */
export function lambdaCost(lambda: number, best: number): PowerCost {
  const square = (best - lambda) ** 2;
  return {
    expected: sharpness.middle * square,
    low: sharpness.low * square,
    high: sharpness.high * square,
  };
}

export function explainLambdaCost(lambda: number, best: number): Explanation {
  return {
    id: 'mixture/lambda-cost',
    formula: 'loss = k (lambda_best - lambda)^2,   k = 2.5 to 4',
    tex: String.raw`\Delta P/P = k\,(\lambda_\mathrm{best}-\lambda)^2`,
    inputs: [
      { symbol: 'lambda', value: lambda, kind: 'lambda' },
      { symbol: 'lambda_best', value: best, kind: 'lambda' },
    ],
    source: 'Heywood, Internal Combustion Engine Fundamentals, ch. 15 (from memory); water-gas balance',
    validRange: [{ symbol: 'lambda', from: 0.7, to: 0.95, kind: 'lambda' }],
  };
}
