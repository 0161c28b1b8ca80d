import { bestSpark_deg, clamp } from './engine.ts';

/** What the tuner has set; one ledger entry differs from the last in one of these. */
export type Tune = {
  /** Gauge [Pa]. */
  readonly boostTarget: number;
  /** Added to the base spark map in the cells above about 0.6 bar of boost [deg]. */
  readonly loadedSpark_deg: number;
  /** At full load. */
  readonly lambdaTarget: number;
  readonly isSprayOn: boolean;
};

export const baseTune: Tune = {
  boostTarget: 100e3,
  loadedSpark_deg: 0,
  lambdaTarget: 0.84,
  isSprayOn: false,
};

/** Target boost over engine speed: full from 2,600 rpm, easing off by 4 % towards the limiter [Pa gauge]. */
export function boostTargetAt(tune: Tune, engineSpeed_rpm: number): number {
  return tune.boostTarget * (1 - 0.04 * clamp((engineSpeed_rpm - 5600) / 1000, 0, 1));
}

/**
 * Spark as mapped [deg]: close to best without boost, knock-limited far before it under boost. The map's last
 * row stands at 1.00 bar and is held beyond, so a boost step by itself moves no spark.
 */
export function sparkAt(tune: Tune, engineSpeed_rpm: number, boost: number): number {
  const bar = Math.min(boost / 1e5, 1);
  const held = bar <= 0 ? 1.5 : 1.5 + 9.8 * bar;
  const loaded = clamp((bar - 0.5) / 0.2, 0, 1);
  return bestSpark_deg(engineSpeed_rpm, bar * 1e5) - held + loaded * tune.loadedSpark_deg;
}

/** Mixture target over manifold pressure [Pa absolute]: 1 at part load, full-load target from 130 kPa. */
export function lambdaTargetAt(tune: Tune, manifoldPressure: number): number {
  return 1 - (1 - tune.lambdaTarget) * clamp((manifoldPressure - 92e3) / 38e3, 0, 1);
}
