import './notes.ts';
import './problems.ts';

export * from './channel.ts';
export * from './pull.ts';
export * from './quantity.ts';
