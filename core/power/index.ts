export * from './car.ts';
export * from './car-file.ts';
export * from './conditions.ts';
export * from './pull-power.ts';
