import type { SubstanceId } from './substance.ts';
import type { TemperatureProperty } from './temperature-curve.ts';

/** What can be wrong with a fluid that a person describes. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    /** Outside the range that the published data cover [K]. */
    'fluids/temperature-outside': {
      property: TemperatureProperty;
      temperature: number;
      from: number;
      to: number;
    };
    'fluids/share-negative': { substance: SubstanceId | 'petrol'; share: number };
    'fluids/shares-over-whole': { sum: number };
    'fluids/share-missing': { substance: SubstanceId };
    /** Density of the reading against what water and pure alcohol have at that temperature [kg/m^3]. */
    'fluids/reading-outside': {
      density: number;
      lowest: number;
      highest: number;
      temperature: number;
      alcohol: SubstanceId;
    };
    /** The mix holds nothing that burns, so there is no air demand to divide by. */
    'fluids/nothing-burns': Record<string, never>;
  }
}
