/** What can be wrong between tank and nozzle. Pressures in Pa, flows in m^3/s. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    /** Nothing drives fluid through the nozzle. */
    'delivery/no-pressure-left': { pressureDifference: number };
    /** Even with its outlet shut the pump does not reach what the nozzle works against, both gauge. */
    'delivery/pump-weaker-than-boost': { available: number; needed: number; boost: number };
    'delivery/nozzle-flow-not-positive': { name: string; flow: number };
    'delivery/nozzle-pressure-not-positive': { name: string; pressureDifference: number };
    'delivery/no-nozzle': Record<string, never>;
    'delivery/pump-unknown': Record<string, never>;
    'delivery/pump-number-negative': { pressure: number; flow: number };
    /** More pressure must mean less flow. */
    'delivery/pump-curve-rises': { pressure: number; flow: number; previousFlow: number };
    'delivery/set-pressure-missing': Record<string, never>;
    'delivery/bucket-no-amount': { point: number };
    'delivery/bucket-not-measurable': { point: number; setting: number };
    'delivery/bucket-empty': Record<string, never>;
  }
}

export {};
