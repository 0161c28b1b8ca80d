/**
 * From a setup to what the tuner sets: need, nozzle, start and full point, endurance, guard band, fallback.
 * `planOf(setup)` makes it all; the parts stand beside it.
 */
import './notes.ts';
import './problems.ts';

export { emptyVolume } from './arrival.ts';
export * from './csv.ts';
export * from './endurance.ts';
export { type FuelBasis, type FuelModel, fuelModel } from './engine-fuel.ts';
export * from './fallback.ts';
export {
  curveOverBoost,
  curveOverPull,
  deliveredAt,
  type FeedCurve,
  type FeedKind,
  type FeedMap,
  type FeedRegion,
  type SprayContext,
} from './feed-curve.ts';
export { type FluidSystemModel, fluidSystemModel } from './fluid-system.ts';
export { type GuardRow, guardBand, guardSpread } from './guard-band.ts';
export * from './guard-csv.ts';
export { interpolate } from './interpolate.ts';
export { type Need, type RatioProfile, ratioProfile, ruleOfThumb } from './need.ts';
export type { PracticeDefault } from './notes.ts';
export {
  combinations,
  explainNozzleChoice,
  type NozzleChoice,
  type NozzleFit,
  nozzleFit,
  rankNozzles,
} from './nozzle-choice.ts';
export * from './plan.ts';
export * from './plan-json.ts';
export * from './power-loss-guide.ts';
export * from './practice.ts';
export { type PullPath, pullPath, speedAtBoost } from './pull-path.ts';
export type { Recommendation } from './recommendation.ts';
export * from './setup.ts';
export type { Strategy } from './strategy.ts';
export { explainStrategy, type MidRangeCost, midRangeCost } from './strategy-numbers.ts';
export {
  fullBeyond,
  laterStart,
  type SprayPoints,
  type StrategyName,
  settablePoints,
  strategyNames,
} from './strategy-points.ts';
