export * from './axis.ts';
export * from './chart-spec.ts';
export * from './chart-svg.ts';
export * from './comparison-chart.ts';
export * from './escape.ts';
