import type { CarInput } from '../../core/session/index.ts';
import { air } from './day.ts';
import { hatch } from './hatch.ts';

/** The car as a tuner would type it: what was weighed, read off a plate or measured, nothing the truth alone knows. */
export const car: CarInput = {
  name: hatch.name,
  mass_kg: hatch.mass,
  massUncertainty_kg: 15,
  gearRatios: [...hatch.gearRatios],
  finalDrive: hatch.finalDrive,
  rollingRadius_m: hatch.rollingRadius,
  pullGear: hatch.gear,
  wheelInertia_kg_m2: hatch.wheelInertia,
  engineInertia_kg_m2: hatch.engineInertia,
  dragArea_m2: hatch.dragArea,
  rollingCoefficient: hatch.rollingCoefficient,
  // Wheel over crank power, as both were once measured: gears and tyre slip together.
  drivetrainEfficiency: 0.867,
  correction: 'none',
};

/** The air as a weather station beside the oval read it. */
export const conditions = {
  place: 'road',
  ambient_C: 12,
  barometer_kPa: air.pressure / 1000,
  relativeHumidity_percent: air.relativeHumidity * 100,
  grade_percent: 0,
} as const;
