import './notes.ts';
import './problems.ts';

export {
  type AirflowPower,
  airflowPowerEstimate,
} from './airflow-power.ts';
export * from './car.ts';
export * from './car-file.ts';
export { type CoastDownFit, type CoastDownWindow, fitCoastDown, wayRemark } from './coast-down.ts';
export { type Coefficients, coastDownTime, coefficientsFromPounds } from './coast-down-time.ts';
export * from './conditions.ts';
export { correctionFactor } from './correction-factor.ts';
export type { FormulaCard } from './explain.ts';
export { explainPower } from './explain-power.ts';
export { findRolls } from './find-rolls.ts';
export { distancePerRadian, type GearingRead, gearingRead, rollingRadius } from './gearing.ts';
export {
  type Air,
  dryAirGasConstant,
  dryPressure,
  humidityRatio,
  moistAirDensity,
  saturationPressure,
} from './moist-air.ts';
export { type OnePullBand, onePullBand, wheelPowerHalf } from './one-pull-band.ts';
export { type PowerOptions, powerOfPull } from './power-of-pull.ts';
export { inputUncertainty, practice } from './practice.ts';
export * from './pull-power.ts';
export { airDensity, loadAt, type RoadLoad, roadLoad } from './road-load.ts';
export { type TwoWay, twoWayDisagreement } from './two-way.ts';
export { dynamicFactor, type TyreSize, tyreSize } from './tyre-size.ts';
