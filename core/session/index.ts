export * from './car.ts';
export * from './car-file.ts';
export * from './conditions.ts';
