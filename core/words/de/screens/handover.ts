import type { ScreenWords } from '../../screen-words.ts';

export const handover: ScreenWords['handover'] = {
  title: 'Übergabe',
  label: 'Übergabeblatt',
  lead: 'Was der Kunde mitnimmt: was getan wurde, was es brachte und wie sicher das ist.',
  kicker: 'Für den Kunden',
  preview: 'Vorschau der Zusammenfassung',
  language: 'In welcher Sprache',
  date: 'Datum auf dem Blatt',
  save: 'Als Datei sichern',
  print: 'Drucken',
  saved: (name) => `${name} liegt in Ihren Downloads.`,
  making: 'Die Zusammenfassung wird geschrieben',
  privateNotes: 'Eigene Notizen werden nie gedruckt. Eine Datei, lesbar ohne Netz.',
  failed: 'Die Zusammenfassung ließ sich nicht schreiben.',
};
