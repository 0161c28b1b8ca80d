import type { SubstanceId } from './substance.ts';

/** What is worth saying of a fluid. */
declare module '../result/result.ts' {
  interface NoteFacts {
    /** Vapour over the mix can catch fire at the temperature it is kept at [K]. */
    'fluids/burns-at-ambient': { ambient: number; flashPoint: number };
    /** The estimate lies above ambient; heat, mist and hot surfaces still light it [K]. */
    'fluids/burns-when-warmer': { ambient: number; flashPoint: number };
    'fluids/does-not-burn': Record<string, never>;
    'fluids/freezes-at-ambient': { ambient: number; freezingPoint: number };
    'fluids/methanol-is-toxic': { exposureLimit_ppm: number };
    'fluids/flame-unseen': Record<string, never>;
    /** More than half alcohol by volume as poured: common practice calls it a flammable liquid in the boot. */
    'fluids/strong-mix': { share: number };
    /** Two alcohols in one mix: excess volume, activity and viscosity are interpolated between the pairs. */
    'fluids/three-parts-estimated': { alcohols: readonly SubstanceId[] };
    /** Volumes shrink when poured together. */
    'fluids/contraction': { share: number };
  }
}
