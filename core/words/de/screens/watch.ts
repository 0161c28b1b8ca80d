import type { ScreenWords } from '../../screen-words.ts';

export const watch: ScreenWords['watch'] = {
  open: 'Einen Ordner beobachten',
  title: 'Ordner eines Aufzeichners beobachten',
  intro:
    'Eine Aufzeichnung, die in diesem Ordner neu ist oder wächst, kommt von selbst in die Sitzung, sobald sie vollständig ist. Der Ordner wird nur gelesen.',
  folder: 'Ordner auf diesem Rechner',
  folderHint: 'Der Ordner, in den der Aufzeichner schreibt. Was schon darin steht, bleibt liegen.',
  start: 'Beobachten',
  change: 'Stattdessen diesen beobachten',
  stop: 'Nicht mehr beobachten',
  logs: 'Neue Aufzeichnungen',
  noLogs: 'Noch keine neue Aufzeichnung.',
  joins: (entry) =>
    `Neue Aufzeichnungen kommen zu Eintrag ${entry}; spätere zum dann neuesten behaltenen Eintrag.`,
  watching: (folder) => `${folder} wird beobachtet`,
  lastLog: (age) => `letzte neue Aufzeichnung vor ${age}`,
  since: (age) => `seit ${age}, noch keine neue Aufzeichnung`,
  seconds: (n) => `${n} s`,
  minutes: (n) => `${n} min`,
  hours: (n) => `${n} h`,
  pulls: (n) => (n === 0 ? 'kein voller Zug' : n === 1 ? '1 Zug' : `${n} Züge`),
  growing: (log) => `${log} wird noch geschrieben`,
  soFar: (length, pulls) => `bisher ${length}, ${pulls}`,
  peak: (power) => `der letzte bis ${power} am Rad`,
  complete: (log) => `${log} ist vollständig und wird gelesen`,
  seen: (log) => `${log} ist vollständig`,
  taken: (log, pulls) => `${log}: ${pulls}`,
  refused: (log) => `${log} wurde nicht übernommen`,
  replaced: 'tritt an die Stelle der kürzeren Kopie',
  noAnswer: 'Der Ordner antwortet nicht',
  states: {
    growing: 'wird geschrieben',
    complete: 'wird gelesen',
    taken: 'in der Sitzung',
    refused: 'nicht übernommen',
  },
  importPath: 'Von einem Pfad einlesen',
  importPathIntro:
    'Ein Pfad je Zeile. Ein Pfad lässt sich auch überall außerhalb eines Feldes einfügen: eine Aufzeichnung wird eingelesen, ein Ordner kann beobachtet werden.',
  paths: 'Pfade auf diesem Rechner',
  noPath: 'Das ist kein Pfad ab der Wurzel, einem Laufwerk oder einer Freigabe.',
};
