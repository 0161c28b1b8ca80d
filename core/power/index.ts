export * from './pull-power.ts';
