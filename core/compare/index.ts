import './notes.ts';

export { bandOfDays } from './band/band-of-days.ts';
export { provenRanges } from './curve/difference-curve.ts';
export * from './evidence/evidence-of-pull.ts';
export * from './evidence/pull-evidence.ts';
export * from './explain-verdict.ts';
export { defaultMargin, judge } from './judge.ts';
export * from './judge-input.ts';
export { waysOf } from './levels/nuisances.ts';
export * from './session/judge-session.ts';
export * from './session/session-table.ts';
export { normalQuantile, tQuantile } from './statistics/index.ts';
export * from './verdict.ts';
