import type { BoostEnd, GateAction, GateQuantity } from '../../ladder/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const ladderProblems: ProblemWordsOf<'ladder'> = {};

export const gateNames: { readonly [G in GateQuantity]: string } = {
  knock: 'Klopfen',
  lambda: 'Magerstes Gemisch',
  fluidPressure: 'Druck des Fluids',
  fluidFlow: 'Durchfluss des Fluids',
  fuelPressure: 'Gehaltener Kraftstoffdruck',
  exhaust: 'Abgastemperatur',
  injectorDuty: 'Auslastung der Einspritzventile',
  fuelPump: 'Förderung der Kraftstoffpumpe',
  mapSensor: 'Saugrohrdrucksensor',
  boostCeiling: 'Obergrenze des Ladedrucks',
  intake: 'Ansauglufttemperatur',
  fluidLeft: 'Rest im Tank',
};

export const gateActionWords: { readonly [A in GateAction]: string } = {
  'stop-then-half-step': 'anhalten, zurück zum letzten guten Stand, dann die halbe Stufe versuchen',
  'back-to-last-good':
    'zurück zum letzten guten Stand; vor dem nächsten Versuch mehr Fluid, kühlere Luft oder weniger Ladedruck',
  'stop-and-check-fuel': 'anhalten und Pumpe, Filter, Einspritzventile und Kraftstoffdruck prüfen',
  'stop-and-check-fluid': 'anhalten und Tank, Pumpe, Filter und Düse des Fluids prüfen',
  'hold-boost': 'keinen weiteren Ladedruck',
  'richer-or-less-spark': 'anhalten: vor dem nächsten Zug fetter, oder weniger Last',
  'cool-down': 'vor dem nächsten Zug abkühlen lassen',
  refill: 'vor dem nächsten Zug den Tank füllen',
};

const ends: Record<BoostEnd, string> = {
  target: 'das Ziel ist erreicht',
  'boost-ceiling': 'die eigene Obergrenze des Ladedrucks',
  'map-sensor': 'der Saugrohrdrucksensor oder seine Obergrenze endet dort',
  injectors: 'die Einspritzventile erreichen ihre Auslastungsgrenze',
  'fuel-pump': 'die Kraftstoffpumpe fördert nicht mehr',
  fluid: 'Pumpe und Düse können nicht mehr Ladedruck versorgen',
  intake: 'die Ansauglufttemperatur erreicht ihre Grenze',
  'predicted-knock': 'dort liegt die vorhergesagte Klopfgrenze',
  'measured-knock': 'knapp darüber hat er geklopft',
};

export const ladderNotes: NoteWordsOf<'ladder'> = {
  'ladder/gate': (f, show) => {
    const told = f.measured ?? f.predicted?.[f.isLowest ? 0 : 1] ?? null;
    const limit = `Grenze ${f.isLowest ? 'mindestens' : 'unter'} ${show.quantity(f.limit, f.kind)}`;
    const level =
      told === null
        ? 'kein Kanal sagt es: selbst hinsehen'
        : `${f.measured === null ? 'erwartet ' : ''}${show.quantity(told, f.kind)}`;
    const close =
      f.closeness !== null && Number.isFinite(f.closeness)
        ? `, ${show.quantity(f.closeness, 'share', 0)} des Weges`
        : '';
    return `${gateNames[f.quantity]}: ${level} (${limit}${close})${f.state === 'closed' ? ', geschlossen.' : '.'}`;
  },
  'ladder/baseline-first': (f) =>
    `Zuerst, wo das Auto steht: ${f.pulls} volle Züge in einem Gang, ohne Fluid, dazwischen abkühlen.`,
  'ladder/prove-the-spray': (f, show) =>
    `Fluid ab ${show.quantity(f.start, 'boost')}, voll bei ${show.quantity(f.full, 'boost')}, sonst nichts geändert. Durchfluss und Druck ankommen sehen. Nichts oder etwas weniger erwarten; ein Verlust über ${show.quantity(f.loss, 'share', 0)} heißt zu viel.`,
  'ladder/boost-first': (f, show) =>
    `Ladedruck vor Zündung, eine Stufe von ${show.span(f.size, 'boost')} (Praxis).`,
  'ladder/half-near-edge': (f, show) =>
    `Eine halbe Stufe: die Klopfgrenze wird nahe ${show.quantity(f.edge, 'boost')} erwartet.`,
  'ladder/half-after-knock': (f, show) =>
    `Eine halbe Stufe: bei ${show.quantity(f.knocked, 'boost')} hat er geklopft.`,
  'ladder/boost-ends': (f, show) =>
    `Der Ladedruck endet bei ${show.quantity(f.boost, 'boost')}: ${ends[f.end]}.`,
  'ladder/spark-after-boost': (f, show) =>
    `Die Zündung folgt dem Ladedruck in den belasteten Zellen: geschätzt bleiben ${show.quantity(f.left, 'angle')} bis ${show.quantity(f.most, 'angle')}.`,
  'ladder/spark-half': (f, show) =>
    `Ein halbes Grad: Nur ${show.quantity(f.left, 'angle')} sind gewiss, ${show.quantity(f.most, 'angle')} höchstens möglich.`,
  'ladder/spark-ends': (f, show) =>
    `Die Zündung endet ${show.quantity(f.spark, 'angle')} über dem Ausgangsstand: die letzten Grade bringen nichts.`,
  'ladder/spark-brings-little': () =>
    'Der letzte Zündschritt brachte weniger als die eigene Schwelle: die Kuppe des Drehmoments ist nahe, mehr bringt nur Klopfen.',
  'ladder/spark-knocked': (f, show) =>
    `Mit ${show.quantity(f.spark, 'angle')} über dem Ausgangsstand hat er geklopft: nicht mehr Zündung ohne mehr Fluid oder kühlere Luft.`,
  'ladder/no-spark-left': (f, show) =>
    `Für einen ganzen Zündschritt bleibt nichts (höchstens ${show.quantity(f.left, 'angle')}).`,
  'ladder/mixture-last': (f, show) =>
    `Das Gemisch zuletzt: Ziel ${show.quantity(f.from, 'lambda', 2)} auf ${show.quantity(f.to, 'lambda', 2)}, denn nun hält das Fluid, was das fette Gemisch hielt.`,
  'ladder/drive-again': (f) =>
    `Nach ${f.after} Änderungen wird ein früherer Stand noch einmal gefahren: hat er sich bewegt, hat sich der Tag bewegt.`,
  'ladder/no-shown-point': () =>
    'Kein Ladedruck ist bekannt, bei dem dieser Motor ohne Klopfen lief: ein Klopfabstand lässt sich nicht rechnen, also ist jede Stufe eine halbe.',
  'ladder/fuelling-unknown': () =>
    'Wie das Steuergerät seinen Kraftstoff findet, ist nicht angegeben: als Regelung auf Lambda angenommen. Prüfen, bevor ein Kennfeld angefasst wird.',
  'ladder/fit-open': (f) =>
    `${f.count} ${f.count === 1 ? 'Punkt' : 'Punkte'} der Einbauprüfung ${f.count === 1 ? 'ist' : 'sind'} offen. Unbeantwortet ist nicht bestanden: zuerst klären.`,
  'ladder/closed-road': () =>
    'Züge gehören auf eine gesperrte oder private Straße: der Fahrer fährt, der Beifahrer bedient den Rechner.',
  'ladder/dyno-cell': () =>
    'Vor dem ersten Zug das Auto verzurren, den Prüfstand lüften und einen Pulverlöscher bereithalten.',
  'ladder/methanol-care': () =>
    'Methanol vergiftet über Haut und Atem und brennt mit einer Flamme, die man bei Tag nicht sieht: Handschuhe, Luft, Wasser bereit.',
  'ladder/boost-breaks-engines': () =>
    'Zu viel Ladedruck zerstört einen Motor in Sekunden. Eine Stufe, dann vor der nächsten jede Abbruchregel ansehen.',
  'ladder/spark-breaks-engines': () =>
    'Zu viel Frühzündung zerstört einen Motor in Sekunden, und Klopfen hört man nicht immer. Eine Stufe, nur in den belasteten Zellen.',
  'ladder/prove-the-fallback': (f, show) =>
    f.boost === null
      ? 'Bevor man sich auf das Fluid verlässt, nachweisen, dass der Motor ohne es von selbst zurückfällt; worauf, ist noch nicht gesetzt.'
      : `Bevor man sich auf das Fluid verlässt, nachweisen, dass der Motor ohne es von selbst auf ${show.quantity(f.boost, 'boost')} zurückfällt.`,
  'ladder/do-not-press-on': () =>
    'Hier nicht weitermachen: der nächste Zug kann der sein, der den Motor kostet.',
  'ladder/now-baseline': (f) => `Den Ausgangsstand fahren: ${f.pulls} Züge, ohne Fluid.`,
  'ladder/now-go-back': (f) =>
    `Zurück zum ${f.toBaseline ? 'Ausgangsstand' : 'letzten guten Stand'}: ${gateActionWords[f.action]}.`,
  'ladder/now-stop': (f) => `Halt: ${gateActionWords[f.action]}.`,
  'ladder/now-wait': (f, show) =>
    `Warten: ${gateActionWords[f.action]}${f.action === 'cool-down' ? `, mindestens ${show.quantity(f.coolDown, 'time', 0)}` : ''}.`,
  'ladder/now-drive': (f) => `Fahren: ${f.pulls} Züge, dann ansehen.`,
  'ladder/now-drive-again': () =>
    'Noch einmal fahren: das Gefahrene lässt sich nicht vergleichen, die Gründe stehen beim Urteil.',
  'ladder/now-more-pulls': (f) =>
    `${f.more} weitere ${f.more === 1 ? 'Zug' : 'Züge'} auf jeder Seite würden es entscheiden.`,
  'ladder/now-mend-the-spray': (f, show) =>
    `Zuerst die Einspritzung des Fluids in Ordnung bringen: sie kostete ${show.quantity(f.loss, 'share')}, mehr als ${show.quantity(f.allowed, 'share', 0)} heißt zu viel.`,
  'ladder/now-loss': (f, show) =>
    `Die letzte Änderung zurücknehmen: sie kostete ${show.quantity(f.loss, 'share')}.`,
  'ladder/now-fit': (f) =>
    `Die Einbauprüfung abschließen: ${f.count === 1 ? 'ein Punkt ist' : `${f.count} Punkte sind`} offen, bevor das Fluid eingeschaltet wird. Unbeantwortet ist nicht bestanden.`,
  'ladder/now-spray': (f, show) =>
    `Fluid einschalten, ab ${show.quantity(f.to ?? 0, 'boost')}, und nachweisen.`,
  'ladder/now-boost': (f, show) =>
    `Ladedruck von ${show.quantity(f.from ?? 0, 'boost')} auf ${show.quantity(f.to ?? 0, 'boost')}.`,
  'ladder/now-spark': (f, show) =>
    `Zündung ${show.difference((f.to ?? 0) - (f.from ?? 0), 'angle')} in den belasteten Zellen.`,
  'ladder/now-mixture': (f, show) =>
    `Gemischziel von ${show.quantity(f.from ?? 0, 'lambda', 2)} auf ${show.quantity(f.to ?? 0, 'lambda', 2)}.`,
  'ladder/now-nothing': () =>
    'Einen früheren Stand noch einmal fahren, um zu sehen, ob sich der Tag bewegt hat.',
  'ladder/now-done': () =>
    'Der Stufenplan ist zu Ende. Einstellungen sichern, Rückfallebene nachweisen, Übergabe schreiben.',
};
