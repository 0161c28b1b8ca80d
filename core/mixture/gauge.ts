import type { Explanation } from '../units/index.ts';

/** Scale of a petrol gauge (common practice): it shows lambda times this, whatever burns. */
export const petrolScale = 14.7;

/** What a gauge with this scale shows at a lambda.  Check: 0.85 shows 12.5. */
export function gaugeShows(lambda: number, scale: number = petrolScale): number {
  return lambda * scale;
}

export function explainGauge(lambda: number, scale: number): Explanation {
  return {
    id: 'mixture/gauge',
    formula: 'shown = lambda x scale',
    inputs: [
      { symbol: 'lambda', value: lambda, kind: 'lambda' },
      { symbol: 'scale', value: scale, kind: 'number' },
      { symbol: 'shown', value: gaugeShows(lambda, scale), kind: 'number' },
    ],
    source: 'a gauge knows lambda alone and shows it on the scale of petrol (common practice)',
    validRange: [{ symbol: 'lambda', from: 0.6, to: 1.3, kind: 'lambda' }],
  };
}

/** Lambda behind what a gauge shows. */
export function lambdaOfGauge(shown: number, scale: number = petrolScale): number {
  return shown / scale;
}
