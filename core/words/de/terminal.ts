import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

const sides: Record<string, string> = { before: 'Vorher', after: 'Nachher' };

export const terminalProblems: ProblemWordsOf<'terminal'> = {
  'terminal/unknown-verb': (f) => ({
    message: f.verb === '' ? 'Es fehlt ein Befehl.' : `„${f.verb}“ ist kein Befehl dieses Programms.`,
    remedy: `Es kennt: ${f.known}.`,
  }),
  'terminal/unknown-option': (f) => ({
    message: `Dieser Befehl kennt die Option ${f.option} nicht.`,
    remedy: 'Mit --help zeigt der Befehl seine Optionen.',
  }),
  'terminal/value-missing': (f) => ({
    message: `${f.option} braucht einen Wert.`,
    remedy: 'Den Wert hinter die Option schreiben.',
  }),
  'terminal/argument-missing': (f) => ({ message: `Es fehlt: ${f.what}.`, remedy: `Aufruf: ${f.usage}` }),
  'terminal/not-a-choice': (f) => ({
    message: `${f.option} kann nicht „${f.value}“ sein.`,
    remedy: `Möglich sind: ${f.choices}.`,
  }),
  'terminal/file-unreadable': (f) => ({
    message: `Die Datei lässt sich nicht lesen: ${f.detail}.`,
    remedy: 'Pfad und Leserecht prüfen.',
  }),
  'terminal/not-json': (f) => ({
    message: `Das ist kein gültiges JSON: ${f.detail}.`,
    remedy: 'Mit einem Texteditor berichtigen; die README zeigt zu jeder Datei ein Beispiel.',
  }),
  'terminal/no-pulls': (f) => ({
    message: `In den ${sides[f.side] ?? f.side}-Logs fand sich kein zählender Volllastzug.`,
    remedy: '„onechange pulls“ zeigt je Log, was gefunden wurde und warum es nicht zählt.',
  }),
  'terminal/damaged': (f) => ({
    message: f.what,
    remedy:
      '„onechange check ORDNER --repair“ stellt her, was history hält, und legt die beschädigte Datei beiseite.',
  }),
};

export const terminalNotes: NoteWordsOf<'terminal'> = {};
