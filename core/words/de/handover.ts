import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const handoverProblems: ProblemWordsOf<'handover'> = {
  'handover/no-browser': (f) => ({
    message:
      f.asked === null
        ? 'Auf diesem Rechner wurde kein Browser gefunden, der PDF druckt.'
        : `ONECHANGE_BROWSER nennt ${f.asked}, und dort steht kein Programm, das laufen darf.`,
    remedy:
      'Die Zusammenfassung als HTML schreiben, in einem Browser öffnen und im Druckdialog „Als PDF sichern“ wählen. Oder Chromium einrichten, oder den Pfad eines solchen in ONECHANGE_BROWSER setzen.',
  }),
  'handover/print-failed': (f) => ({
    message: `Der Browser ${f.browser} hat die Zusammenfassung nicht gedruckt: ${f.detail}.`,
    remedy:
      'Noch einmal versuchen; bleibt es dabei, als HTML schreiben und im Druckdialog eines Browsers „Als PDF sichern“ wählen.',
  }),
  'handover/visit-is-this-one': (f) => ({
    message: `Die Sitzung in ${f.folder} ist die geöffnete selbst; daneben lässt sich nichts legen.`,
    remedy: 'Den Ordner eines früheren Besuchs desselben Autos nennen.',
  }),
  'handover/logo-is-drawing': () => ({
    message:
      'Dieses Logo ist eine Zeichnung (SVG). Zeichnungen können Skripte enthalten und werden nicht genommen.',
    remedy: 'Als PNG sichern, etwa 600 Punkte breit, und das wählen.',
  }),
  'handover/logo-not-a-picture': () => ({
    message: 'Das ist weder ein PNG noch ein JPEG.',
    remedy: 'Das Logo als PNG oder JPEG sichern und das wählen.',
  }),
  'handover/logo-damaged': () => ({
    message: 'Dieses Bild ist beschädigt: Seine Größe lässt sich nicht lesen.',
    remedy: 'In einem Bildprogramm öffnen, neu sichern und das wählen.',
  }),
  'handover/logo-too-large': (f, show) => ({
    message: `Dieses Bild hat ${show.number(f.size_bytes / 1000)} kB; mehr als ${show.number(f.most_bytes / 1000)} kB kommen nicht in eine Sitzung.`,
    remedy: 'Kleiner sichern: 600 Punkte Breite reichen für den Druck.',
  }),
};

export const handoverNotes: NoteWordsOf<'handover'> = {};
