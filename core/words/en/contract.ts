import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { expected } from './expectation.ts';

export const contractProblems: ProblemWordsOf<'contract'> = {
  'contract/unknown-request': (f) => ({
    message: `The host does not know the request “${f.name}”.`,
    remedy: 'Reload the window: screen and host are of different versions.',
  }),
  'contract/input-invalid': (f) => ({
    message: `“${f.field}” can't be used: ${expected(f.expected)}.`,
    remedy: 'Correct that field.',
  }),
  'contract/no-session': () => ({
    message: 'No session is open.',
    remedy: 'Open one, or start a new one.',
  }),
  'contract/other-session': (f) => ({
    message: `Another session was opened meanwhile: ${f.open}. The change meant for ${f.asked} was not made.`,
    remedy: 'Open that session again and make the change there.',
  }),
  'contract/read-only': (f) => ({
    message: `This session can only be read: ${f.because}`,
    remedy: 'Close the other program, or copy the folder and open the copy.',
  }),
  'contract/cancelled': () => ({
    message: 'Cancelled. Nothing was changed.',
    remedy: 'Start it again when you like.',
  }),
  'contract/host-gone': () => ({
    message: 'The part of the program that keeps the session does not answer.',
    remedy: 'Start the program again; everything that was confirmed is on disk.',
  }),
  'contract/internal': (f) => ({
    message: `Something went wrong inside the program: ${f.detail}`,
    remedy: 'Your session on disk is whole. Try again; if it returns, report it with these words.',
  }),
  'contract/refused': (f) => ({
    message: `The request was refused: ${f.why}`,
    remedy: 'Open the workbench from the address that the terminal printed.',
  }),
};

export const contractNotes: NoteWordsOf<'contract'> = {};
