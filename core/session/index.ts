export {
  type Car,
  type CarFile,
  CarFileSchema,
  type CarInput,
  CarSchema,
  type Conditions,
  ConditionsSchema,
  unknownConditions,
} from '../power/index.ts';
export * from './declared-change.ts';
export * from './edit.ts';
export * from './edited-pulls.ts';
export * from './entry.ts';
export * from './entry-gates.ts';
export * from './entry-peak.ts';
export * from './entry-pulls.ts';
export * from './entry-trace.ts';
export * from './handover-choices.ts';
export * from './json-depth.ts';
export * from './json-difference.ts';
export * from './leaning.ts';
export * from './limits.ts';
export * from './logged-fluid.ts';
export { type MergeConflict, mergeJson } from './merge-json.ts';
export * from './migrations/index.ts';
export * from './power-remarks.ts';
export * from './run-analysis.ts';
export * from './run-record.ts';
export * from './schema-problems.ts';
export * from './session.ts';
export * from './session-ladder.ts';
export * from './session-ledger.ts';
export * from './session-table.ts';
export * from './settle-conflict.ts';
export * from './setup.ts';
export * from './two-ways.ts';

import './problems.ts';

export type { FileRepair } from './store-notes.ts';
export type { VersionFault, ZipFault } from './store-problems.ts';
