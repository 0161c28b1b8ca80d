/** What is worth saying of the mixture. Shares as plain numbers. */
declare module '../result/result.ts' {
  interface NoteFacts {
    /** Closed loop on measured lambda: petrol is cut by the alcohol's share, by itself. */
    'mixture/loop-cuts-by-itself': { share: number };
    'mixture/chased-trim-leans': Record<string, never>;
    'mixture/trim-near-its-end': { share: number; limit: number };
    /** Open loop or mass air: without a cut the charge is that much richer. */
    'mixture/cut-by-hand': { share: number; lambdaWithout: number };
    'mixture/mass-air-misses-vapour': Record<string, never>;
    'mixture/gauge-on-petrol-scale': { lambda: number; shown: number; scale: number; airFuel: number };
    'mixture/targets-not-told-apart': { from: number; to: number; cost: number };
    'mixture/rich-costs': { lambda: number; low: number; high: number };
    'mixture/best-power-from-memory': Record<string, never>;
    /** Running dry with fuel cut by hand is lean at full load. */
    'mixture/dry-is-lean': { lambda: number };
    'mixture/lean-breaks-engines': { leanest: number };
    'mixture/arrived-clogged': ArrivedFacts;
    'mixture/arrived-matched': ArrivedFacts;
    'mixture/arrived-oversize': ArrivedFacts;
    'mixture/arrived-undecided': ArrivedFacts;
    'mixture/water-alone': Record<string, never>;
  }
}

/** Measured fluid over planned, with its 95 % interval. */
export type ArrivedFacts = { ratio: number; low: number; high: number };
