import './problems.ts';
import './terminal-problems.ts';

export * from './coast-down.ts';
export * from './host-port.ts';
export * from './move.ts';
export * from './preferences.ts';
export * from './requests.ts';
export * from './snapshot.ts';
export * from './verdict-wire.ts';
export * from './versions.ts';
export * from './watch.ts';
export * from './wire.ts';
