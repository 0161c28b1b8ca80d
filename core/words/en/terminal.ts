import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const terminalProblems: ProblemWordsOf<'terminal'> = {
  'terminal/unknown-verb': (f) => ({
    message: f.verb === '' ? 'No verb was given.' : `“${f.verb}” is not a verb of this program.`,
    remedy: `It knows: ${f.known}.`,
  }),
  'terminal/unknown-option': (f) => ({
    message: `This verb has no option ${f.option}.`,
    remedy: 'Call the verb with --help to see its options.',
  }),
  'terminal/value-missing': (f) => ({
    message: `${f.option} needs a value.`,
    remedy: 'Write it behind the option.',
  }),
  'terminal/argument-missing': (f) => ({ message: `${f.what} is missing.`, remedy: `Usage: ${f.usage}` }),
  'terminal/not-a-choice': (f) => ({
    message: `${f.option} can't be “${f.value}”.`,
    remedy: `It takes: ${f.choices}.`,
  }),
  'terminal/file-unreadable': (f) => ({
    message: `The file can't be read: ${f.detail}.`,
    remedy: 'Check the path and that the file may be read.',
  }),
  'terminal/not-json': (f) => ({
    message: `This is not valid JSON: ${f.detail}.`,
    remedy: 'Mend it with a text editor; the README has an example of each file.',
  }),
  'terminal/no-pulls': (f) => ({
    message: `No full-throttle pull that counts was found in the ${f.side} logs.`,
    remedy: 'Run "onechange pulls" on each to see what was found and why it does not count.',
  }),
  'terminal/damaged': (f) => ({
    message: f.what,
    remedy:
      'Run "onechange check FOLDER --repair": what history holds is restored, the damaged file is set aside.',
  }),
};

export const terminalNotes: NoteWordsOf<'terminal'> = {};
