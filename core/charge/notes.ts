/** What is worth saying of the charge. Temperatures in K, times in s. */
declare module '../result/result.ts' {
  interface NoteFacts {
    /** The air is full before the fluid is gone; the rest goes on as drops. */
    'charge/air-is-full': { evaporatedShare: number; temperature: number };
    /** The drops live longer than their way to the valve takes. */
    'charge/drops-outlive-the-way': { lifetime: number; residence: number; share: number };
    'charge/drop-size-practice': { diameter: number };
    'charge/way-unknown': { residence: number };
    /** A number that the setup lacks, taken from practice. */
    'charge/practice-default': { what: ChargeDefault; value: number };
    /** What the temperature sensor shows behind wet spray is not the charge. */
    'charge/sensor-reads-wet': Record<string, never>;
    'charge/spray-before-cooler': Record<string, never>;
    'charge/spray-before-compressor': Record<string, never>;
    /** The correlation was fitted for primary reference fuels of 80 to 100. */
    'charge/octane-outside-correlation': { octane: number };
    /** Knock headroom is a comparison with a point that this engine has shown, never a promise. */
    'charge/headroom-is-relative': { boost: number; isKnockLimited: boolean };
    /** At the end of what the sums look at: more is not claimed. */
    'charge/headroom-capped': { what: 'spark' | 'boost'; at: number };
  }
}

/** Defaults of practice that the charge falls back on. */
export type ChargeDefault =
  | 'compressorEfficiency'
  | 'coolerEffectiveness'
  | 'coolerLoss'
  | 'ambientTemperature'
  | 'barometer'
  | 'relativeHumidity'
  | 'volumetricEfficiency'
  | 'intakeClosing'
  | 'compressionRatio'
  | 'rodRatio'
  | 'octane'
  | 'lambda'
  | 'spark';
