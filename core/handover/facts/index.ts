export { type DayGate, dayGates } from './day-gates.ts';
export * from './facts-schema.ts';
export * from './make-facts.ts';
export { torqueOf } from './result-facts.ts';
export * from './source.ts';
export * from './spark-facts.ts';
export * from './visit-facts.ts';
