export * from './axis.ts';
export * from './chart-spec.ts';
