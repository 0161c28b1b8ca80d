import type { FuelBasis } from './engine-fuel.ts';
import type { StrategyName } from './strategy-points.ts';

/** A default of practice that a number rests on because the setup leaves it open. */
export type PracticeDefault =
  | 'fuelConsumption'
  | 'volumetricEfficiency'
  | 'manifoldTemperature'
  | 'lambda'
  | 'boostCurve'
  | 'pullDuration'
  | 'pullSpeeds'
  | 'peakSpeed'
  | 'air'
  | 'mix'
  | 'place';

/** What is worth saying of a plan. Pa gauge, m^3/s, kg/s, shares. */
declare module '../result/result.ts' {
  interface NoteFacts {
    'injection/fuel-from': { basis: FuelBasis; fuel: number };
    'injection/practice-default': { what: PracticeDefault; value: number };
    'injection/rule-of-thumb': { rule: number; need: number; difference: number };
    'injection/ratio-outside-window': { ratio: number; low: number; high: number };
    'injection/ratio-hardly-seen': { ratio: number };
    'injection/ratio-quenches': { ratio: number };
    'injection/nozzle-too-small': { delivered: number; need: number; feed: number };
    'injection/nozzle-matched': { delivered: number; need: number; feed: number };
    'injection/nozzle-oversize': { delivered: number; need: number; feed: number };
    'injection/nozzle-much-too-large': { delivered: number; need: number; feed: number };
    'injection/nozzle-several': { count: number };
    /** Between two sizes the larger is taken. */
    'injection/larger-of-two': { smaller: string; smallerFeed: number; feed: number };
    'injection/none-large-enough': { feed: number };
    'injection/same-mean-fluid': { start: number; share: number; feed: number };
    'injection/peak-need-met': { start: number; full: number; feed: number };
    'injection/mid-range-cost': { from: number; to: number; shortfall: number };
    'injection/over-fed': { from: number; to: number; most: number };
    'injection/still-over-feeds': { feed: number };
    'injection/under-fed-at-peak': { feed: number };
    'injection/start-at-once': { fluidToFuel: number; feed: number };
    'injection/rounded-to-step': { start: number; full: number; step: number };
    'injection/controller-cannot': { asked: number; most: number; what: 'start' | 'full' };
    'injection/start-moved-for-knock': { start: number; was: number; limit: number; delay: number };
    'injection/fluid-too-late': { arrives: number; limit: number; delay: number };
    'injection/fluid-never-arrives': { volume: number };
    'injection/coarse-drops': { pressureDifference: number; full: number };
    'injection/recommended-because': { strategy: StrategyName; misfeed: number; otherMisfeed: number };
    /** The two ways miss the need alike; `isSame` where they even come to the same points. */
    'injection/recommended-tie': { strategy: StrategyName; misfeed: number; isSame: boolean };
    'injection/recommended-only': { strategy: StrategyName };
    'injection/recommended-for-drops': { strategy: StrategyName };
    /** Flow does not follow pump speed in a line: the full point that really meets the need. */
    'injection/full-meets-need': { full: number; peakFeed: number };
    'injection/start-above-peak': { start: number; peak: number };
    /** Metered by boost alone, low engine speed gets more than it burns for. */
    'injection/boost-alone-over-feeds': { most: number; engineSpeed_rad_s: number };
    'injection/spray-alone': Record<string, never>;
    'injection/power-costs-where': { from: number; to: number; most: number };
    'injection/guide-later-start': { from: number; to: number };
    'injection/guide-smaller-nozzle': { choice: string; delivered: number; feed: number };
    'injection/guide-no-smaller-nozzle': Record<string, never>;
    'injection/guide-use-the-room': { boost: number | null };
    'injection/tank-empties': { pulls: number };
    'injection/reserve-too-small': { reserve: number; perPull: number };
    'injection/refill-differs': { planned: number; used: number; difference: number };
    'injection/refill-agrees': { planned: number; used: number; difference: number };
    'injection/endurance-from-log': { perPull: number; planned: number; pulls: number };
    'injection/log-differs': { perPull: number; planned: number; difference: number };
    'injection/fallback': { boost: number; from: 'sound' | 'knock' };
    'injection/fallback-unknown': Record<string, never>;
    'injection/fallback-quickly': { seconds: number };
  }
}
