import type { ShownKind } from '../units/index.ts';

/**
 * What a logged column can mean. The values of a channel with a quantity are SI whatever the file held:
 * engine speed in rad/s, pressure in Pa absolute, boost in Pa gauge, temperature in K, spark in rad before top
 * dead centre, shares (duty, pedal) from 0 to 1, lambda as lambda.
 */
export const quantities = {
  time: 'time',
  engineSpeed: 'engineSpeed',
  vehicleSpeed: 'speed',
  gpsSpeed: 'speed',
  gear: 'number',
  pedal: 'share',
  throttle: 'share',
  manifoldPressure: 'pressure',
  boost: 'boost',
  boostTarget: 'boost',
  manifoldPressureTarget: 'pressure',
  barometricPressure: 'pressure',
  wastegateDuty: 'share',
  sparkAdvance: 'angle',
  knockRetard: 'angle',
  knockLevel: 'number',
  knockCount: 'number',
  lambda: 'lambda',
  lambdaTarget: 'lambda',
  intakeTemperature: 'temperature',
  ambientTemperature: 'temperature',
  coolantTemperature: 'temperature',
  oilTemperature: 'temperature',
  exhaustTemperature: 'temperature',
  fuelTemperature: 'temperature',
  airMassFlow: 'massFlow',
  load: 'share',
  injectorDuty: 'share',
  injectorTime: 'time',
  fuelPressure: 'fluidPressure',
  fuelFlow: 'massFlow',
  fuelTrimShort: 'share',
  fuelTrimLong: 'share',
  fluidFlow: 'volumeFlow',
  fluidPressure: 'fluidPressure',
  fluidDuty: 'share',
  fluidLevel: 'share',
  wheelPower: 'power',
  enginePower: 'power',
  wheelTorque: 'torque',
  engineTorque: 'torque',
  acceleration: 'acceleration',
  altitude: 'length',
  distance: 'length',
  latitude: 'number',
  longitude: 'number',
  heading: 'angle',
  batteryVoltage: 'voltage',
  ethanolShare: 'share',
  relativeHumidity: 'share',
  tractionControl: 'number',
  limiterActive: 'number',
} as const satisfies Record<string, ShownKind>;

export type QuantityId = keyof typeof quantities;
export const quantityIds = Object.keys(quantities) as QuantityId[];
