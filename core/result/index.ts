export * from './check-without-compiling.ts';
export * from './expectation.ts';
export * from './result.ts';
