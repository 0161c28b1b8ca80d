/** What can be wrong on the way from ambient to cylinder. Pressures absolute in Pa, temperatures in K. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'charge/pressure-not-positive': { pressure: number };
    'charge/humidity-outside': { relativeHumidity: number };
    /** A compressor that would lower the pressure. */
    'charge/pressure-ratio-below-one': { inlet: number; outlet: number };
    /** Efficiency or effectiveness, a share. */
    'charge/share-outside': { what: 'compressorEfficiency' | 'coolerEffectiveness'; share: number };
    'charge/loss-above-pressure': { loss: number; pressure: number };
    /** So much fluid that the charge would freeze: the numbers can't belong together. */
    'charge/colder-than-known': { lowest: number; fluidOverAir: number };
    'charge/engine-number-missing': {
      what: 'displacement' | 'compressionRatio' | 'octane' | 'engineSpeed' | 'boost';
    };
    /** Spark so late that nothing burns inside the stroke, or so early that it lies before the valve has shut. */
    'charge/spark-outside': { spark: number };
  }
}

export {};
