export * from './dictionary.ts';
export * from './sentences.ts';
export * from './show.ts';
