export * from './setup.ts';
