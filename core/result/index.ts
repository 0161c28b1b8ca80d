export * from './check-without-compiling.ts';
export * from './expectation.ts';
export * from './note-json.ts';
export * from './result.ts';
