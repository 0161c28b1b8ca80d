import './problems.ts';

export * from './axis.ts';
export * from './chart-spec.ts';
export * from './chart-svg.ts';
export * from './comparison-chart.ts';
export * from './css-text.ts';
export * from './document/index.ts';
export * from './escape.ts';
export * from './facts/index.ts';
export * from './handover-csv.ts';
export * from './handover-fonts.ts';
export * from './handover-html.ts';
export * from './page-box.ts';
export * from './read-logo.ts';
export * from './torque-chart.ts';
