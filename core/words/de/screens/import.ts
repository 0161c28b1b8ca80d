import type { ScreenWords } from '../../screen-words.ts';

export const importing: ScreenWords['importing'] = {
  title: 'Wohin gehören diese Aufzeichnungen?',
  file: 'Aufzeichnung',
  entry: 'Eintrag',
  toBaseline: 'Ausgangsstand',
  toNew: 'Eine neue Änderung',
  toNone: 'Später entscheiden',
  import: 'Einlesen',
  reading: (name) => `${name} wird gelesen`,
  imported: (name, pulls) =>
    pulls === 0
      ? `${name} ist da. Ein voller Zug fand sich nicht darin.`
      : `${name} ist da, mit ${pulls === 1 ? '1 Zug' : `${pulls} Zügen`}.`,
  duplicate: (name, entries) =>
    entries.length > 1
      ? `${name} war schon da. Die Züge zählen jetzt in den Einträgen ${entries.join(' und ')}; Rückgängig nimmt sie hier wieder heraus.`
      : `${name} war schon da; die vorhandene Kopie gilt.`,
  failed: (name) => `${name} ließ sich nicht einlesen.`,
  keptAsIs: 'Eine Aufzeichnung wird Byte für Byte kopiert und nie verändert.',
  columns: 'Spalten',
  column: 'In der Datei',
  meaning: 'Gelesen als',
  unit: 'Einheit',
  why: 'Weil',
  sure: 'sicher',
  likely: 'wahrscheinlich',
  guess: 'geraten',
  byHand: 'von Hand',
  move: {
    open: 'Verschieben',
    openOf: (log) => `${log} in einen anderen Eintrag verschieben`,
    title: (log) => `${log} verschieben`,
    titleAll: 'Aufzeichnungen in andere Einträge verschieben',
    intro:
      'Spalten, berichtigte Züge und Notizen einer Aufzeichnung gehen mit. Jeder Eintrag, der eine gewinnt oder verliert, wird neu beurteilt.',
    toNone: 'In keinem Eintrag',
    emptied: (entry) => `${entry} bleibt ohne Aufzeichnung.`,
    already: (log, entry) => `${log} steht schon in ${entry}; die Züge zählen dort einmal.`,
    moved: (log, entry) => `${log} zählt jetzt in ${entry}.`,
    takenOut: (log) => `${log} zählt jetzt in keinem Eintrag.`,
    movedMany: (n) => `${n} Aufzeichnungen wurden verschoben.`,
    unplaced: (n) =>
      n === 1 ? '1 Aufzeichnung zählt in keinem Eintrag.' : `${n} Aufzeichnungen zählen in keinem Eintrag.`,
    place: 'Eintrag wählen',
  },
};
