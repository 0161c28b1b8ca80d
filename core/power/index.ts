import './notes.ts';
import './problems.ts';

export * from './car.ts';
export * from './car-file.ts';
export * from './conditions.ts';
export * from './correction-factor.ts';
export * from './explain.ts';
export {
  distancePerRadian,
  estimateGearing,
  explainGearing,
  type Gearing,
  gearOf,
  rollingRadius,
} from './gearing.ts';
export {
  type Air,
  dryPressure,
  explainAirDensity,
  humidityRatio,
  moistAirDensity,
  saturationPressure,
} from './moist-air.ts';
export { explainEnginePower, explainWheelPower, type PowerOptions, powerOfPull } from './power-of-pull.ts';
export { inputUncertainty, practice } from './practice.ts';
export * from './pull-power.ts';
export { airDensity, explainRoadLoad, loadAt, type RoadLoad, roadLoad } from './road-load.ts';
export * from './tyre-size.ts';
