export * from './axis.ts';
export * from './chart-spec.ts';
export * from './chart-svg.ts';
export * from './comparison-chart.ts';
export * from './escape.ts';
export * from './handover-data.ts';
export * from './handover-html.ts';
export * from './make-handover.ts';
