import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const handoverProblems: ProblemWordsOf<'handover'> = {
  'handover/no-browser': (f) => ({
    message:
      f.asked === null
        ? 'No browser that prints PDF was found on this machine.'
        : `ONECHANGE_BROWSER names ${f.asked}, and there is no program that may be run.`,
    remedy:
      'Write the summary as HTML, open it in any browser, and choose “Save as PDF” in its print dialog. Or install Chromium, or put the path of one into ONECHANGE_BROWSER.',
  }),
  'handover/print-failed': (f) => ({
    message: `The browser ${f.browser} did not print the summary: ${f.detail}.`,
    remedy:
      'Try again; if it stays, write the summary as HTML and choose “Save as PDF” in a browser’s print dialog.',
  }),
  'handover/visit-is-this-one': (f) => ({
    message: `The session in ${f.folder} is the one that is open, so there is nothing to lay beside it.`,
    remedy: 'Name the folder of an earlier visit of the same car.',
  }),
  'handover/logo-is-drawing': () => ({
    message: 'This logo is a drawing (SVG). Drawings can carry script, so they are not taken.',
    remedy: 'Save it as PNG, about 600 dots wide, and choose that.',
  }),
  'handover/logo-not-a-picture': () => ({
    message: 'This is neither a PNG nor a JPEG.',
    remedy: 'Save the logo as PNG or JPEG and choose that.',
  }),
  'handover/logo-damaged': () => ({
    message: 'This picture is damaged: its size can’t be read.',
    remedy: 'Open it in a picture program, save it anew, and choose that.',
  }),
  'handover/logo-too-large': (f, show) => ({
    message: `This picture has ${show.number(f.size_bytes / 1000)} kB; ${show.number(f.most_bytes / 1000)} kB is the most that goes into a session.`,
    remedy: 'Save it smaller: 600 dots wide is enough for print.',
  }),
};

export const handoverNotes: NoteWordsOf<'handover'> = {};
