/**
 * From tank to nozzle. Pressures absolute in Pa (`rise` and `setPressure` are over the tank), flows in m^3/s.
 */
import './notes.ts';
import './problems.ts';

export * from './bucket-test.ts';
export * from './line-fill.ts';
export * from './line-loss.ts';
export * from './metering.ts';
export * from './nozzle-flow.ts';
export * from './operating-point.ts';
export * from './pump.ts';
