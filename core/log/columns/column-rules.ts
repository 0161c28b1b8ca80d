import type { QuantityId } from '../quantity.ts';
import type { Concept } from './column-words.ts';

/** A quantity and the concepts its header must say, none of `none` beside them. */
export type ColumnRule = {
  readonly quantity: QuantityId | 'sample' | 'date';
  readonly all: readonly Concept[];
  readonly none?: readonly Concept[];
  /** Confidence of a header that says just this. */
  readonly trust: number;
};

function rule(quantity: ColumnRule['quantity'], trust: number, all: string, none = ''): ColumnRule {
  const list = (words: string) => words.split(' ').filter((w) => w !== '') as Concept[];
  return { quantity, trust, all: list(all), none: list(none) };
}

/**
 * From concepts to quantities. Order matters only between rules that explain a header equally well: the first
 * wins. Trust is our own estimate (common practice): 0.95 where trade words leave no doubt, 0.6 where the
 * header alone could mean another thing and the unit has to decide.
 */
export const columnRules: readonly ColumnRule[] = [
  rule('time', 0.95, 'time date'),
  rule('time', 0.95, 'time', 'injector knock fluid lambda spark'),
  rule('sample', 0.8, 'sample', 'time'),
  rule('date', 0.8, 'date', 'time'),
  rule('engineSpeed', 0.97, 'engine speed'),
  rule('engineSpeed', 0.97, 'engine turns', 'wheel boost'),
  rule('engineSpeed', 0.95, 'turns', 'wheel limiter gear boost pump'),
  rule('gpsSpeed', 0.97, 'gps speed'),
  rule('gpsSpeed', 0.8, 'gps', 'altitude latitude longitude heading track time date'),
  rule('vehicleSpeed', 0.97, 'vehicle speed', 'gps engine turns'),
  rule('vehicleSpeed', 0.85, 'wheel speed', 'gps engine'),
  rule('vehicleSpeed', 0.85, 'speed', 'engine turns gps fluid pump boost engaged intake'),
  rule('gear', 0.95, 'gear', 'ratio speed'),
  rule('gear', 0.95, 'speed engaged'),
  rule('gear', 0.95, 'gear engaged', 'ratio'),
  rule('pedal', 0.97, 'pedal', 'torque manifold'),
  rule('pedal', 0.95, 'pedal throttle'),
  rule('throttle', 0.95, 'throttle', 'pedal pressure temp'),
  rule('manifoldPressureTarget', 0.95, 'manifold pressure target', 'boost'),
  rule('manifoldPressureTarget', 0.9, 'manifold target', 'temp boost'),
  rule('boostTarget', 0.95, 'boost target', 'speed temp duty'),
  rule('boostTarget', 0.95, 'boost pressure target', 'temp'),
  rule('manifoldPressure', 0.97, 'manifold pressure', 'fuel oil exhaust'),
  rule('manifoldPressure', 0.95, 'intake pressure', 'fuel oil exhaust baro throttle ambient'),
  rule('manifoldPressure', 0.95, 'manifold', 'temp exhaust fuel spark boost trim'),
  rule('boost', 0.97, 'boost pressure', 'temp error trim'),
  rule('boost', 0.93, 'boost', 'temp duty wastegate error speed turns trim'),
  rule('barometricPressure', 0.97, 'baro', 'temp trim'),
  rule('barometricPressure', 0.95, 'ambient pressure', 'boost'),
  rule('wastegateDuty', 0.97, 'wastegate duty'),
  rule('wastegateDuty', 0.93, 'wastegate', 'pressure'),
  rule('wastegateDuty', 0.9, 'boost duty'),
  rule('knockRetard', 0.97, 'knock retard'),
  rule('knockRetard', 0.96, 'knock retard spark'),
  rule('knockCount', 0.95, 'knock count'),
  rule('knockLevel', 0.95, 'knock level'),
  rule('knockLevel', 0.6, 'knock'),
  rule('sparkAdvance', 0.95, 'spark', 'knock limiter duty retard trim pulse'),
  rule('lambdaTarget', 0.96, 'lambda target'),
  rule('lambdaTarget', 0.96, 'afr target'),
  rule('lambdaTarget', 0.96, 'afr lambda target'),
  rule('lambda', 0.96, 'lambda', 'trim short long temp'),
  rule('lambda', 0.95, 'afr', 'trim'),
  rule('lambda', 0.96, 'afr lambda', 'trim'),
  rule('ambientTemperature', 0.96, 'ambient temp'),
  rule('ambientTemperature', 0.96, 'ambient temp intake'),
  rule('coolantTemperature', 0.96, 'coolant temp'),
  rule('coolantTemperature', 0.96, 'engine coolant temp'),
  rule('coolantTemperature', 0.7, 'engine temp', 'oil intake exhaust'),
  rule('coolantTemperature', 0.6, 'coolant', 'pressure fluid flow level pump'),
  rule('oilTemperature', 0.96, 'oil temp', 'other'),
  rule('exhaustTemperature', 0.96, 'exhaust temp'),
  rule('exhaustTemperature', 0.9, 'exhaust', 'pressure lambda afr'),
  rule('fuelTemperature', 0.95, 'fuel temp'),
  rule('intakeTemperature', 0.96, 'intake temp', 'spark trim'),
  rule('intakeTemperature', 0.96, 'manifold intake temp'),
  rule('intakeTemperature', 0.95, 'manifold temp'),
  rule('intakeTemperature', 0.8, 'boost temp'),
  rule('airMassFlow', 0.96, 'airflow', 'bulk'),
  rule('airMassFlow', 0.9, 'intake flow', 'bulk'),
  rule('airMassFlow', 0.96, 'airflow intake flow', 'bulk'),
  rule('load', 0.9, 'load', 'fluid'),
  rule('load', 0.92, 'engine load'),
  rule('injectorDuty', 0.96, 'injector duty', 'fluid'),
  rule('injectorTime', 0.95, 'injector pulse', 'fluid'),
  rule('fuelPressure', 0.96, 'fuel pressure'),
  rule('fuelFlow', 0.94, 'fuel flow', 'trim'),
  rule('fuelTrimShort', 0.95, 'trim short'),
  rule('fuelTrimShort', 0.95, 'fuel trim short'),
  rule('fuelTrimShort', 0.9, 'lambda trim'),
  rule('fuelTrimShort', 0.8, 'fuel trim', 'long'),
  rule('fuelTrimLong', 0.95, 'trim long'),
  rule('fuelTrimLong', 0.95, 'fuel trim long'),
  rule('fluidFlow', 0.96, 'fluid flow'),
  rule('fluidFlow', 0.96, 'fluid injector flow'),
  rule('fluidPressure', 0.96, 'fluid pressure'),
  rule('fluidPressure', 0.96, 'fluid pressure pump'),
  rule('fluidDuty', 0.95, 'fluid duty'),
  rule('fluidDuty', 0.95, 'fluid injector duty'),
  rule('fluidDuty', 0.9, 'fluid pump'),
  rule('fluidLevel', 0.95, 'fluid level'),
  rule('wheelPower', 0.95, 'wheel power'),
  rule('enginePower', 0.95, 'engine power'),
  rule('enginePower', 0.7, 'power'),
  rule('wheelTorque', 0.95, 'wheel torque'),
  rule('engineTorque', 0.95, 'engine torque'),
  rule('engineTorque', 0.7, 'torque'),
  rule('acceleration', 0.9, 'acceleration', 'lateral pedal'),
  rule('altitude', 0.93, 'altitude'),
  rule('altitude', 0.93, 'gps altitude'),
  rule('distance', 0.93, 'distance'),
  rule('latitude', 0.93, 'latitude', 'acceleration'),
  rule('latitude', 0.93, 'gps latitude'),
  rule('longitude', 0.93, 'longitude'),
  rule('longitude', 0.93, 'gps longitude'),
  rule('longitude', 0.93, 'gps long', 'trim fuel'),
  // French writes a pedal's travel as its course.
  rule('heading', 0.9, 'heading', 'temp pressure pedal throttle'),
  rule('heading', 0.93, 'gps heading'),
  rule('heading', 0.75, 'track'),
  rule('batteryVoltage', 0.95, 'battery'),
  rule('ethanolShare', 0.93, 'ethanol'),
  rule('relativeHumidity', 0.95, 'humidity'),
  rule('tractionControl', 0.9, 'traction'),
  rule('limiterActive', 0.9, 'limiter'),
];
