export * from './cards.ts';
export * from './formula-words.ts';
export * from './sources.ts';
