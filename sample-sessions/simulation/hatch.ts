/**
 * The Fenmoor hatch: an invented car with an invented engine. No maker builds it and no number here was taken
 * from one; each lies in the range that practice calls usual for its kind. SI.
 */
export const hatch = {
  name: 'Fenmoor hatch (invented)',
  /** As weighed with driver, passenger and half a tank [kg]. */
  mass: 1420,
  gearRatios: [3.36, 1.94, 1.32, 0.99, 0.8, 0.67],
  finalDrive: 4.06,
  gear: 3,
  rollingRadius: 0.312,
  wheelInertia: 4.0,
  engineInertia: 0.18,
  dragArea: 0.7,
  rollingCoefficient: 0.012,
  drivetrainEfficiency: 0.885,
  /** Slip of the driven tyres at no force, and its rise per newton of tractive force. */
  slipAtRest: 0.002,
  slipPerNewton: 4.2e-6,
} as const;

/** The invented 2.0 L turbo engine. */
export const engine = {
  displacement: 2.0e-3,
  /** Heat released per kg of dry air burned, petrol and alcohol alike within a percent [J/kg]. */
  heatPerAir: 2.98e6,
  /** Gross indicated efficiency at best spark and best mixture. */
  indicatedEfficiency: 0.392,
  /** Volumetric efficiency against the charge at the valve, over engine speed [rpm]. */
  volumetric: [
    [1000, 0.84],
    [2000, 0.92],
    [3000, 0.985],
    [4000, 1.01],
    [5000, 0.985],
    [6000, 0.93],
    [7000, 0.85],
  ],
  /** Share by which the charge warms towards the port wall on its way to the valve. */
  portHeating: 0.35,
  portWall: 363,
  /** Loss of torque per squared degree before the top of the spark hill. */
  sparkCurvature: 0.00052,
  /** Loss of torque per squared lambda off best power. */
  lambdaCurvature: 3.5,
  lambdaBest: 0.845,
  /** Shift of best lambda per fluid/fuel mass ratio: alcohol likes it a little richer. */
  lambdaBestPerFluid: -0.06,
  /** Degrees by which best spark moves ahead per fluid/fuel mass ratio: the spray slows the burn. */
  burnDelay: 7.5,
  stoichPetrol: 14.3,
  stoichMethanol: 6.43,
  /** All four injectors open at the rated pressure difference [kg/s]. */
  injectorStatic: 1.32 / 60,
} as const;

/** Half water, half methanol as poured; 44.2 % methanol by mass. */
export const spray = {
  methanolShare: 0.442,
  density: 922,
  /** Latent heat of the mix [J/kg]: 0.442 x 1.17 MJ/kg + 0.558 x 2.46 MJ/kg. */
  latentHeat: 1.89e6,
  /** Share that evaporates before the valve; the rest does so in the cylinder. */
  evaporatedBeforeValve: 0.42,
  /** Share of that cooling that the intake sensor, just after the nozzle, has felt. */
  seenBySensor: 0.5,
  startBoost: 40e3,
  fullBoost: 100e3,
  /** Nozzle: volume flow [m^3/s] at the rated difference [Pa]. */
  nozzleFlow: 140e-6 / 60,
  nozzleRatedDifference: 7e5,
  pumpPressure: 9.6e5,
  checkValve: 0.5e5,
  /** Time until fluid leaves the nozzle after the valve opens, and its rise time [s]. */
  delay: 0.12,
  rise: 0.15,
} as const;
