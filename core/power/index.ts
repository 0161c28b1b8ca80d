import './notes.ts';
import './problems.ts';

export {
  type AirflowPower,
  airflowPowerEstimate,
} from './air/airflow-power.ts';
export { correctionFactor } from './air/correction-factor.ts';
export {
  type Air,
  dryAirGasConstant,
  dryPressure,
  humidityRatio,
  moistAirDensity,
  saturationPressure,
} from './air/moist-air.ts';
export * from './car/car.ts';
export * from './car/car-file.ts';
export { distancePerRadian, type GearingRead, gearingRead, rollingRadius } from './car/gearing.ts';
export { dynamicFactor, type TyreSize, tyreSize } from './car/tyre-size.ts';
export {
  type CoastDownFit,
  type CoastDownWindow,
  fitCoastDown,
  type LoggedRoll,
  mostRolls,
  rollsIn,
  wayRemark,
} from './coast-down/coast-down.ts';
export * from './coast-down/coast-down-report.ts';
export { type Coefficients, coastDownTime, coefficientsFromPounds } from './coast-down/coast-down-time.ts';
export { findRolls } from './coast-down/find-rolls.ts';
export { waysOfRolls } from './coast-down/roll-ways.ts';
export * from './conditions.ts';
export type { FormulaCard } from './explain.ts';
export { explainPower } from './explain-power.ts';
export { type OnePullBand, onePullBand, wheelPowerHalf } from './one-pull-band.ts';
export { type PowerOptions, powerOfPull } from './power-of-pull.ts';
export { inputUncertainty, practice } from './practice.ts';
export * from './pull-power.ts';
export { airDensity, loadAt, type RoadLoad, roadLoad } from './road-load.ts';
export { type KnownLag, lagOfLog } from './speed/lag-of-log.ts';
export { type TwoWay, twoWayDisagreement } from './two-way.ts';
