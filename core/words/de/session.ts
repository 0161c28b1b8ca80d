import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { expected } from './expectation.ts';

export const sessionProblems: ProblemWordsOf<'session'> = {
  'session/field-invalid': (f) => ({
    message: `„${f.field}“ ist nicht brauchbar: ${expected(f.expected)}.`,
    remedy: 'Das Feld berichtigen; die README nennt jedes Feld mit seiner Einheit.',
  }),
  'session/newer-version': (f) => ({
    message: `Das hat ein neueres Programm geschrieben (Version ${f.version}; dieses kennt ${f.known}).`,
    remedy: 'Mit dem neueren Programm öffnen. Es wurde nichts verändert.',
  }),
  'session/no-version': () => ({
    message: 'Das ist keine Sitzung: Es fehlt schemaVersion.',
    remedy: 'Den Ordner mit session.json wählen oder eine frühere Fassung aus dem Ordner history nehmen.',
  }),
  'session/no-entry': (f) => ({
    message: `In dieser Sitzung gibt es keinen Eintrag „${f.entryId}“.`,
    remedy: 'Einen Eintrag aus dem Logbuch wählen.',
  }),
  'session/no-setup': () => ({
    message: 'Die Fahrzeugdaten sind noch nicht ausgefüllt.',
    remedy: 'Motor, Fluidanlage und Ziel in den Fahrzeugdaten eingeben.',
  }),
  'session/no-run': (f) => ({
    message: `In dieser Sitzung gibt es keine Aufzeichnung „${f.runId}“.`,
    remedy: 'Zuerst die Logdatei einlesen.',
  }),
  'session/run-not-in-entry': (f) => ({
    message: `Im Eintrag „${f.entryId}“ steht keine Aufzeichnung „${f.runId}“.`,
    remedy: 'Nachsehen, wo sie jetzt steht: Vielleicht wurde sie schon verschoben.',
  }),
  'session/no-table': (f) => ({
    message: `In dieser Sitzung gibt es keine Tabelle „${f.tableId}“.`,
    remedy: 'Eine Tabelle im Plan wählen.',
  }),
  'session/baseline-stays': () => ({
    message: 'Die Ausgangsmessung ist Eintrag 0 und bleibt dort.',
    remedy: 'Stattdessen einen neuen Eintrag anlegen.',
  }),
  'session/leans-on-itself': () => ({
    message: 'Das ist diese Sitzung selbst oder eine Kopie davon: dieselben Züge zählten doppelt.',
    remedy: 'Einen anderen Tag des Autos wählen.',
  }),
  'session/entry-has-runs': (f) => ({
    message: `Dieser Eintrag enthält ${f.runs} gefahrene Aufzeichnungen und kann nicht entfernt werden.`,
    remedy: 'Stattdessen verwerfen: Er bleibt im Logbuch, zählt aber nicht mehr.',
  }),
  'session/conflict-gone': (f) => ({
    message: `Die Stelle „${f.path}“ gibt es in dieser Sitzung nicht mehr.`,
    remedy:
      'Zuerst den Eintrag oder die Aufzeichnung zurückholen: Eine frühere Fassung der Sitzung enthält sie.',
  }),
  'session/nothing-to-undo': () => ({
    message: 'Es gibt nichts rückgängig zu machen.',
    remedy: 'Frühere Fassungen der Sitzung stehen in ihrem Ordner history.',
  }),
  'session/nothing-to-redo': () => ({
    message: 'Es gibt nichts zu wiederholen.',
    remedy: 'Wiederholen geht nur bis zur nächsten Änderung.',
  }),
};

export const sessionNotes: NoteWordsOf<'session'> = {};
