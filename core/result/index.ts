export * from './expectation.ts';
export * from './result.ts';
