import type { ScreenWords } from '../../screen-words.ts';

export const move: ScreenWords['move'] = {
  pack: 'In eine Zip-Datei packen',
  packTitle: 'Diese Sitzung in eine Zip-Datei packen',
  packWhy:
    'Alle Aufzeichnungen, Einträge und früheren Fassungen kommen mit, jede Datei mit ihrer Prüfsumme. Hier ändert sich nichts.',
  zipPath: 'Zip-Datei auf diesem Rechner',
  packNow: 'Packen',
  packing: 'Wird gepackt',
  packed: (files) => `Gepackt: ${files} Dateien.`,
  sum: 'SHA-256 der Zip-Datei',
  sumWhy: 'Der andere Rechner zeigt dieselbe Zeile, wenn die Zip-Datei heil angekommen ist.',

  unpack: 'Zip-Datei öffnen',
  unpackTitle: 'Eine gepackte Sitzung öffnen',
  unpackWhy:
    'Sie wird in einen eigenen Ordner entpackt, und nur, wenn jede Datei zu ihrer Prüfsumme passt. Was schon da ist, wird nicht ersetzt.',
  zipToOpen: 'Zip-Datei auf diesem Rechner',
  into: 'Entpacken in den Ordner',
  unpackNow: 'Entpacken',
  unpacked: (files, checked) =>
    checked > 0
      ? `${checked} von ${files} Dateien passen zu den Prüfsummen in der Zip-Datei.`
      : `${files} Dateien. Die Zip-Datei bringt keine Liste von Prüfsummen mit.`,
  unpacking: 'Wird entpackt',

  merge: 'Andere Kopie zusammenführen',
  mergeTitle: 'Eine andere Kopie dieser Sitzung zusammenführen',
  mergeWhy:
    'Für eine Sitzung, an der an zwei Orten gearbeitet wurde. Aufzeichnungen und Einträge beider bleiben. Die andere Kopie wird nur gelesen.',
  otherPath: 'Ordner oder Zip-Datei der anderen Kopie',
  mergeNow: 'Zusammenführen',
  merging: 'Wird zusammengeführt',
  newRuns: (names) =>
    names.length === 0 ? 'Hier fehlte keine Aufzeichnung.' : `Übernommen: ${names.join(', ')}.`,
  agreed: 'Nichts wurde auf zwei Arten geändert.',
  twoWays: (n) =>
    n === 1 ? 'Eines wurde auf zwei Arten geändert' : `${n} Dinge wurden auf zwei Arten geändert`,
  twoWaysWhy:
    'Der Wert dieser Kopie gilt. Beide stehen im Verlaufsordner, und Sie können den anderen jederzeit nehmen.',
  order: 'Beide Kopien haben hier etwas angefügt. Alles ist da, zuerst das dieser Kopie.',
  here: 'Hier',
  copy: 'Andere Kopie',
  take: 'Diesen nehmen',
  takeOf: (side, place) => `„${side}“ nehmen für ${place}`,
  stands: 'Gilt',
  other: 'Seither bearbeitet; beide Werte sind noch da.',
  gone: 'Worin es stand, ist nicht mehr in der Sitzung.',

  aside: 'Ansehen',
  asideTitle: 'Die beiseitegelegte Datei',
  asideWhy:
    'Sie passt nicht mehr zu ihrem Siegel: Entweder wurde sie beschädigt, oder jemand hat einige Zeichen von Hand geändert. Wenn Sie die Änderung kennen, nehmen Sie sie. Rückgängig bringt den jetzigen Stand zurück.',
  differs: 'Sie unterscheidet sich von der Sitzung in',
  differsNot: 'Sie sagt dasselbe wie die Sitzung.',
  asideTake: 'Doch übernehmen',
};
