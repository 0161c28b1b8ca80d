/** Scale of a petrol gauge (common practice): it shows lambda times this, whatever burns. */
export const petrolScale = 14.7;

/** What a gauge with this scale shows at a lambda.  Check: 0.85 shows 12.5. */
export function gaugeShows(lambda: number, scale: number = petrolScale): number {
  return lambda * scale;
}

/** Lambda behind what a gauge shows. */
export function lambdaOfGauge(shown: number, scale: number = petrolScale): number {
  return shown / scale;
}
