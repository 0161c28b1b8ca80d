import type { ScreenWords } from '../../screen-words.ts';

export const history: ScreenWords['history'] = {
  open: 'Frühere Fassungen',
  title: 'Frühere Fassungen dieser Sitzung',
  intro:
    'Jedes Speichern bewahrt die Fassung davor. Ansehen ändert nichts; zurückholen lässt sich rückgängig machen, und die Aufzeichnungen bleiben, wie sie sind.',
  list: 'Fassungen, neueste zuerst',
  current: 'wie jetzt',
  setAside: 'beiseitegelegt: sie passte nicht mehr zu ihrem Siegel',
  original: 'bewahrt, bevor das Format erneuert wurde',
  entries: (n) => (n === 1 ? '1 Eintrag' : `${n} Einträge`),
  first: 'die erste bewahrte',
  nothing: 'nichts, was sich zeigt',
  unusable: {
    damaged: 'beschädigt, nicht zu öffnen',
    newer: 'von einem neueren Programm geschrieben',
    invalid: 'ein Feld passt nicht',
  },
  entry: (n) => `Eintrag ${n}`,
  note: 'seine Notiz',
  ledgerOrder: 'Einträge hinzugefügt oder entfernt',
  areas: {
    name: 'Name',
    note: 'Notiz zur Sitzung',
    car: 'das Auto',
    conditions: 'Luft und Ort',
    limits: 'Grenzen',
    setup: 'Motor und Einspritzanlage',
    ledger: 'das Logbuch',
    derivedChannels: 'Kanäle nach Formel',
    tables: 'Tabellen',
  },
  other: 'andere Felder',
  more: (n) => `und ${n} weitere`,
  changed: 'Geändert gegen die Fassung davor',
  against: 'Was heute anders ist',
  same: 'Nichts: sie sagt dasselbe wie die Sitzung jetzt.',
  ledger: 'Ihr Logbuch',
  logs: (n) => (n === 0 ? 'keine Aufzeichnung' : n === 1 ? '1 Aufzeichnung' : `${n} Aufzeichnungen`),
  dropped: 'verworfen',
  missing: (n) =>
    n === 1
      ? 'Sie kennt eine Aufzeichnung, die nicht mehr im Ordner liegt.'
      : `Sie kennt ${n} Aufzeichnungen, die nicht mehr im Ordner liegen.`,
  restore: 'Diese Fassung zurückholen',
  restored: 'Die frühere Fassung ist jetzt die gültige.',
  none: 'Noch keine frühere Fassung: die erste Änderung macht eine.',
  readOnly: 'Nur zum Ansehen',
};
