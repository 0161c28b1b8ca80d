import type { ScreenWords } from '../../screen-words.ts';

export const columns: ScreenWords['columns'] = {
  open: 'Spalten',
  openOf: (log) => `Spalten von ${log}`,
  logs: 'Logs',
  found: 'Was beim Lesen auffiel',
  wayOf: (log) => `Richtung der Züge in ${log}`,
  ways: {
    unsaid: 'Richtung offen',
    out: 'Alle hin',
    back: 'Alle zurück',
    'out-first': 'Im Wechsel, erst hin',
    'back-first': 'Im Wechsel, erst zurück',
  },
  title: (log) => `Spalten von ${log}`,
  intro:
    'Wofür jede Spalte gehalten wurde. Eine Korrektur gilt für dieses Log und lässt sich rückgängig machen.',
  column: 'Spalte',
  takenFor: 'Gehalten für',
  unit: 'Einheit',
  sure: 'Sicher',
  why: 'Warum',
  first: 'Erste Werte',
  nothing: 'nichts, bleibt wie sie ist',
  noUnit: 'keine',
  quantityOf: (column) => `Größe von ${column}`,
  unitOf: (column) => `Einheit von ${column}`,
  alike: (n) =>
    n === 1
      ? 'Auch für 1 anderes Log mit denselben Spalten'
      : `Auch für ${n} andere Logs mit denselben Spalten`,
  later: 'Auch für spätere Logs mit denselben Spalten',
  kept: (names) => `Für Logs mit diesen Spalten gemerkt: ${names}.`,
  forget: 'Vergessen',
  save: 'Diese Spalten verwenden',
  unusable: (log, entry) => `${log} ist nicht brauchbar: Die Züge daraus fehlen in Eintrag ${entry}.`,
  unusableMany: (n) => `${n} Aufzeichnungen sind nicht brauchbar: Die Züge daraus fehlen.`,
  seeWhy: 'Warum?',
  doubles: (quantity) => `Zwei Spalten sollen ${quantity} sein; die sicherere wird verwendet.`,
};
