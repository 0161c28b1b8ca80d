/**
 * What is taken where the car file is silent. All common practice, each said by
 * a note with the number it stands behind.
 */
export const practice = {
  /** Drag coefficient 0.31 times 2.1 m^2. [m^2] */
  dragArea: 0.65,
  rollingCoefficient: 0.012,
  /** Wheel power over crank power, middle of 0.82 to 0.92. */
  drivetrainEfficiency: 0.87,
  /** Driven tyres ahead of the road at full load, middle of 0.01 to 0.03. */
  tyreSlip: 0.02,
  /** 20 C, 101.325 kPa, dry. [kg/m^3] */
  airDensity: 1.2041,
  relativeHumidity: 0.5,
  /** Wheels, tyres, brakes as a share of the car's mass, both axles: EPA's 1.5 % per axle. */
  wheelInertiaShare: 0.03,
} as const;

/** Relative standard uncertainties of inputs. Common practice; half of what careful people disagree by. */
export const inputUncertainty = {
  /** Where the mass comes without one. */
  mass: 0.02,
  dragAreaGiven: 0.05,
  dragAreaDefault: 0.15,
  rollingGiven: 0.15,
  rollingDefault: 0.25,
  roadLoadGiven: 0.05,
  airDensityMeasured: 0.005,
  airDensityDefault: 0.04,
  radiusGiven: 0.01,
  radiusFromTyre: 0.015,
  /** 0.82 to 0.92 hold 95 %. */
  efficiencyDefault: 0.03,
  /** It is rarely known better than 3 %. */
  efficiencyGiven: 0.015,
  slipGiven: 0.003,
  slipDefault: 0.006,
  loggedSpeed: 0.005,
  /** Of relative humidity that nobody read: 10 to 90 % hold 95 %. Not relative: a share of one. */
  humidityDefault: 0.2,
  /** Slope of a road called level, as rise per distance. */
  gradeAssumed: 0.003,
  gradeGiven: 0.001,
} as const;

export const standardGravity = 9.80665;
