import type { ScreenWords } from '../../screen-words.ts';

export const desktop: ScreenWords['desktop'] = {
  menus: { session: 'Sitzung', edit: 'Bearbeiten', view: 'Ansicht', window: 'Fenster' },
  openSession: 'Sitzung öffnen …',
  openRecent: 'Zuletzt benutzte Sitzungen',
  noRecent: 'Noch keine',
  openSample: 'Erfundenes Beispiel öffnen',
  closeSession: 'Sitzung schließen',
  showFolder: 'Ordner der Sitzung zeigen',
  handoverPdf: 'Übergabe als PDF …',
  quit: 'Beenden',
  reload: 'Bildschirme neu zeichnen',
  fullScreen: 'Ganzer Bildschirm',
  larger: 'Größer',
  smaller: 'Kleiner',
  ordinarySize: 'Übliche Größe',
  chooseSession: 'Ordner einer Sitzung wählen',
  savePdf: 'Wohin mit der PDF-Datei',
  pdfFiles: 'PDF',
  notOpened: 'Das ließ sich nicht öffnen',
  noPdf: 'Die PDF-Datei ist nicht entstanden',
  stopped: 'Die Bildschirme stehen',
  stoppedMore:
    'Alles Bestätigte liegt auf der Platte, und die Sitzung ist noch offen. Der Grund steht in der Protokolldatei, ohne Namen und Zahlen von Ihnen.',
  drawAgain: 'Neu zeichnen',
};
