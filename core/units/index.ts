export * from './as-read.ts';
export * from './explanation.ts';
export * from './file-unit.ts';
export * from './tidy.ts';
export * from './typed-value.ts';
export * from './unit.ts';
export * from './unit-choice.ts';
