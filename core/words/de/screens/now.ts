import type { ScreenWords } from '../../screen-words.ts';

export const now: ScreenWords['now'] = {
  title: 'Jetzt',
  gates: 'Abbruchregeln',
  baseline: {
    title: 'Den Ausgangsstand fahren',
    why: 'Drei Züge oder mehr in einem Gang, von unterhalb des Ladedruckaufbaus bis kurz vor den Begrenzer, dazwischen abkühlen.',
  },
  baselineMore: (n) => ({
    title: n === 1 ? 'Noch ein Zug im Ausgangsstand' : `Noch ${n} Züge im Ausgangsstand`,
    why: 'An der Streuung zwischen den Zügen wird jede spätere Wirkung gemessen.',
  }),
  change: {
    title: 'Eines ändern',
    why: 'Der Ausgangsstand steht. Eines ändern, aufschreiben, fahren.',
  },
  drive: (entry) => ({
    title: `${entry} fahren`,
    why: 'Zwei bis vier Züge, gleicher Gang, gleicher Beginn, sonst nichts verändert.',
  }),
  more: (n, entry) => ({
    title: n === 1 ? `Noch ein Zug für ${entry}` : `Noch ${n} Züge für ${entry}`,
    why: 'Dann ist in 8 von 10 Fällen zu sehen, ob eine Wirkung von der Größe der Spanne da ist.',
  }),
  undecidable: (entry) => ({
    title: `${entry}: nicht zu unterscheiden`,
    why: 'Keine vernünftige Zahl von Zügen würde es entscheiden. Gleichmäßigere Züge oder ein größerer Schritt schon.',
  }),
  notComparable: (entry) => ({
    title: `${entry} noch einmal fahren`,
    why: 'So wie gefahren ist es nicht vergleichbar; der Grund steht beim Urteil.',
  }),
  loss: (entry) => ({
    title: `${entry} zurücknehmen`,
    why: 'Es kostete Leistung. Verwerfen, dann steht die nächste Änderung auf der davor.',
  }),
  again: {
    title: 'Einen früheren Eintrag noch einmal fahren',
    why: 'Vier Änderungen, seit der Tag zuletzt geprüft wurde. Bewegt sich der Eintrag, hat sich der Tag bewegt.',
  },
  next: {
    title: 'Das Nächste ändern',
    why: 'Das Letzte ist belegt. Eines nach dem anderen.',
  },
  chooseFiles: 'Aufzeichnungen wählen',
  addChange: 'Änderung aufschreiben',
  openSetup: 'Aufbau öffnen',
  dropChange: 'Änderung verwerfen',
  dropped: 'Verworfen. Das Nächste wird ausgerechnet',
  gateLimit: (value, limit) => `${value}, Grenze ${limit}`,
  gateLowest: (value, limit) => `${value}, mindestens ${limit}`,
  gateOf: (value, limit) => `${value} von ${limit}`,
  gateBound: {
    number: (limit) => `Abbruch bei ${limit}`,
    lowest: (limit) => `mindestens ${limit}`,
    limit: (limit) => `Grenze ${limit}`,
  },
  notDriven: 'Sie werden aus den Zügen gelesen.',
  notLogged: (names) => `Nicht aufgezeichnet, also selbst hinsehen: ${names}.`,
  gateStates: { open: 'offen', near: 'nah', closed: 'zu', unmeasured: 'nicht aufgezeichnet' },
  writeStep: 'Diese Stufe aufschreiben',
  openPlan: 'Plan öffnen',
  openLimits: 'Grenzen ansehen',
  openFit: 'Einbauprüfung öffnen',
  stepOf: (n, of) => `Stufe ${n} von ${of}`,
  closedWhy: (measured) => `${measured}. Kein Urteil zählt, solange eine Abbruchregel greift.`,
  openHandover: 'Übergabe schreiben',
  stepsLeft: (n) =>
    n === 1 ? 'Eine Stufe steht noch im Stufenplan.' : `${n} Stufen stehen noch im Stufenplan.`,
  noLadder:
    'Mit Motor und Fluidsystem im Aufbau kommt die nächste Stufe mit ihrer Größe und ihren Abbruchregeln.',
  cautions: {
    pull: 'Ein Zug gehört auf den Prüfstand oder eine gesperrte Straße. Der Fahrer fährt, jemand anderes bedient den Rechner.',
    boost:
      'Mehr Ladedruck mit zu wenig Fluid, Kraftstoff oder Zündreserve kann den Motor in Sekunden zerstören. Kleine Stufen, beim ersten Klopfen aufhören.',
  },
};
