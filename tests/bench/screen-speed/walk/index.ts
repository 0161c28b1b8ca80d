import type { Action } from '../interactions.ts';
import { benchWalk } from './bench.ts';
import { dialogWalk } from './dialogs.ts';
import { handoverWalk, planWalk, rideWalk, setupWalk, tablesWalk } from './sheets.ts';

/** Through all screens, sheets, tabs and dialogs of the sample, with every kind of action in them. */
export const walk: readonly { readonly part: string; readonly actions: readonly Action[] }[] = [
  { part: 'bench', actions: benchWalk },
  { part: 'dialogs', actions: dialogWalk },
  { part: 'setup', actions: setupWalk },
  { part: 'plan', actions: planWalk },
  { part: 'tables', actions: tablesWalk },
  { part: 'handover', actions: handoverWalk },
  { part: 'ride', actions: rideWalk },
];
