import './notes.ts';

export * from './evidence/evidence-of-pull.ts';
export * from './evidence/pull-evidence.ts';
export * from './judge.ts';
export * from './judge-input.ts';
export { tQuantile } from './statistics/index.ts';
export * from './verdict.ts';
