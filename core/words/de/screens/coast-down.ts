import type { ScreenWords } from '../../screen-words.ts';

export const coastDown: ScreenWords['coastDown'] = {
  title: 'Aus dem Ausrollen in den Aufzeichnungen',
  none: 'In keiner Aufzeichnung dieser Sitzung rollt das Auto im Leerlauf aus.',
  how: 'So geht es: Reifen warm, Straße eben, kein Wind. Auf hohes Tempo bringen, Leerlauf einlegen, Fuß vom Pedal, nicht bremsen und bis Schritttempo ausrollen lassen. Dann dasselbe in der Gegenrichtung, in derselben Aufzeichnung oder der nächsten. Geschwindigkeit und Drehzahl aufzeichnen und einlesen; ein Platz im Logbuch ist nicht nötig.',
  caution:
    'Auf gesperrter Straße, wie es das Recht am Ort verlangt. Den Motor laufen lassen: Ohne ihn fehlt Bremse und Lenkung die Hilfskraft.',
  logs: 'Aufzeichnungen',
  noLog:
    'Keine Aufzeichnung ist gewählt. Die wählen, die dafür gefahren wurden; ihr Ausrollen zählt zusammen.',
  runOption: (name, rolls) => `${name}, ${rolls}`,
  rollCount: (n) => (n === 1 ? '1 Versuch' : `${n} Versuche`),
  allWays: 'In welche Richtung',
  eachItsOwn: 'Jedes für sich',
  table: 'Gefundenes Ausrollen',
  columns: { roll: 'Nr.', time: 'Wann', speed: 'Tempo', way: 'Richtung' },
  from: (from, to) => `${from} bis ${to}`,
  wayOf: (n) => `Richtung von Nr. ${n}`,
  ways: { out: 'Hin', back: 'Zurück', 'left-out': 'Auslassen' },
  noneCounts: 'Keines zählt. Bei denen, die dafür gefahren wurden, die Richtung angeben.',
  at: (speed) => `Kraft bei ${speed}`,
  beyond: (speed) => `Kraft bei ${speed}, hochgerechnet`,
  take: 'Ins Auto übernehmen',
  taken: 'Ausrollversuch ins Auto übernommen.',
  stands: 'Diese Werte stehen im Auto.',
};
