export * from './answers.ts';
