/**
 * Petrol and the alcohol that now burns with it. Flows in kg/s, lambda as lambda, shares as plain numbers.
 *
 *   mixturePlan(question)     over boost: what the loop does, what the table needs, the gauge, the target
 *   fluidFromTrim(question)   the other way round: trim at constant lambda measures the fluid that arrived
 */
import './notes.ts';
import './problems.ts';

export * from './best-power.ts';
export * from './blend-demand.ts';
export * from './fluid-from-trim.ts';
export * from './fuelling.ts';
export * from './gauge.ts';
export * from './target-shift.ts';
