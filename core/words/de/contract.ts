import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { expected } from './expectation.ts';

export const contractProblems: ProblemWordsOf<'contract'> = {
  'contract/unknown-request': (f) => ({
    message: `Die Anfrage „${f.name}“ ist unbekannt.`,
    remedy: 'Das Fenster neu laden: Bildschirm und Kern sind verschiedene Versionen.',
  }),
  'contract/input-invalid': (f) => ({
    message: `„${f.field}“ ist nicht brauchbar: ${expected(f.expected)}.`,
    remedy: 'Das Feld berichtigen.',
  }),
  'contract/no-session': () => ({
    message: 'Es ist keine Sitzung offen.',
    remedy: 'Eine öffnen oder eine neue beginnen.',
  }),
  'contract/other-session': (f) => ({
    message: `Inzwischen wurde eine andere Sitzung geöffnet: ${f.open}. Die Änderung für ${f.asked} wurde nicht gemacht.`,
    remedy: 'Jene Sitzung wieder öffnen und dort ändern.',
  }),
  'contract/read-only': (f) => ({
    message: `Diese Sitzung lässt sich nur lesen: ${f.because}`,
    remedy: 'Das andere Programm schließen oder den Ordner kopieren und die Kopie öffnen.',
  }),
  'contract/cancelled': () => ({
    message: 'Abgebrochen. Es wurde nichts verändert.',
    remedy: 'Jederzeit neu beginnen.',
  }),
  'contract/host-gone': () => ({
    message: 'Der Teil des Programms, der die Sitzung hält, antwortet nicht.',
    remedy: 'Das Programm neu starten; alles Bestätigte liegt auf der Platte.',
  }),
  'contract/internal': (f) => ({
    message: `Im Programm ist etwas schiefgegangen: ${f.detail}`,
    remedy:
      'Die Sitzung auf der Platte ist heil. Noch einmal versuchen; kehrt es wieder, mit diesen Worten melden.',
  }),
  'contract/refused': (f) => ({
    message: `Die Anfrage wurde abgelehnt: ${f.why}`,
    remedy: 'Die Adresse öffnen, die das Terminal genannt hat.',
  }),
};

export const contractNotes: NoteWordsOf<'contract'> = {};
