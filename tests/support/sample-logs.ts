import { readFileSync } from 'node:fs';
import { findPulls, type Log, type Pull, readLog } from '../../core/log/index.ts';
import { type CarFile, CarFileSchema, ConditionsSchema, powerOfPull } from '../../core/power/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { sampleFolder } from './sample-truth.ts';

/** The sample's car as typed, with the air of its day. */
export const sampleCar: CarFile = CarFileSchema.parse(
  JSON.parse(readFileSync(new URL('car.json', sampleFolder), 'utf8')),
);
export const sampleConditions = ConditionsSchema.parse(sampleCar.conditions);

/** A log of the sample folder as the program reads it, with the pulls that it finds. */
export function sampleLog(path: string): { readonly log: Log; readonly pulls: readonly Pull[] } {
  const bytes = readFileSync(new URL(path, sampleFolder));
  const log = unwrap(readLog(bytes, { file: path }));
  return { log, pulls: findPulls(log, sampleCar).pulls };
}

export function samplePower(log: Log, pull: Pull) {
  return unwrap(powerOfPull(log, pull, sampleCar, sampleConditions));
}
