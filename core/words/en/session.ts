import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { expected } from './expectation.ts';

export const sessionProblems: ProblemWordsOf<'session'> = {
  'session/field-invalid': (f) => ({
    message: `“${f.field}” can't be used: ${expected(f.expected)}.`,
    remedy: 'Correct that field; the README lists every field with its unit.',
  }),
  'session/newer-version': (f) => ({
    message: `This was written by a newer program (version ${f.version}; this one knows ${f.known}).`,
    remedy: 'Open it with the newer program. Nothing was changed.',
  }),
  'session/no-version': () => ({
    message: 'This is no session: it has no schemaVersion.',
    remedy: 'Pick the folder that holds session.json, or take an earlier version from its history folder.',
  }),
  'session/no-entry': (f) => ({
    message: `There is no entry “${f.entryId}” in this session.`,
    remedy: 'Pick an entry from the ledger.',
  }),
  'session/no-setup': () => ({
    message: 'The setup sheet is not filled in yet.',
    remedy: 'Enter engine, fluid system and target in the setup.',
  }),
  'session/no-run': (f) => ({
    message: `There is no run “${f.runId}” in this session.`,
    remedy: 'Import the log first.',
  }),
  'session/run-not-in-entry': (f) => ({
    message: `Entry “${f.entryId}” does not hold the run “${f.runId}”.`,
    remedy: 'Look where it stands now: it may have been moved before.',
  }),
  'session/no-table': (f) => ({
    message: `There is no table “${f.tableId}” in this session.`,
    remedy: 'Pick one of the tables on the plan.',
  }),
  'session/baseline-stays': () => ({
    message: 'The baseline is entry 0 and stays there.',
    remedy: 'Add a new entry instead.',
  }),
  'session/leans-on-itself': () => ({
    message: 'That is this session itself, or a copy of it: the same pulls would count twice.',
    remedy: 'Choose another day of the car.',
  }),
  'session/entry-has-runs': (f) => ({
    message: `This entry holds ${f.runs} driven runs and can't be removed.`,
    remedy: 'Drop it instead: it stays in the book but no longer counts.',
  }),
  'session/conflict-gone': (f) => ({
    message: `The place of “${f.path}” is no longer in this session.`,
    remedy: 'Bring the entry or run back first: an earlier version of the session holds it.',
  }),
  'session/nothing-to-undo': () => ({
    message: 'There is nothing to undo.',
    remedy: 'Earlier versions of the session stand in its history folder.',
  }),
  'session/nothing-to-redo': () => ({
    message: 'There is nothing to redo.',
    remedy: 'Redo works until the next edit.',
  }),
};

export const sessionNotes: NoteWordsOf<'session'> = {};
