import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const mixtureProblems: ProblemWordsOf<'mixture'> = {
  'mixture/lambda-outside': (f, show) => ({
    message: `Mit Lambda ${show.number(f.lambda, 2)} läuft kein Motor.`,
    remedy:
      'Lambda eingeben, nicht die Anzeige einer Luft/Kraftstoff-Skala: 12,5 auf einer Benzinskala ist 0,85.',
  }),
  'mixture/air-not-positive': (f, show) => ({
    message: `Ein Luftstrom von ${show.quantity(f.airFlow, 'massFlow')} lässt nichts zu mischen.`,
    remedy: 'Leistung, Hubraum oder Ladedruck in den Fahrzeugdaten prüfen.',
  }),
  'mixture/no-alcohol-to-see': () => ({
    message:
      'Das Fluid enthält keinen Alkohol: es verbrennt nichts, also verrät keine Gemischkorrektur, wie viel ankommt.',
    remedy: 'Wasser mit Eimermessung, Durchflusssensor oder über das Nachfüllen messen.',
  }),
  'mixture/alcohol-takes-all': (f, show) => ({
    message: `Der Alkohol allein bräuchte ${show.quantity(f.share, 'share', 0)} der Luft: für Benzin bliebe nichts.`,
    remedy: 'Durchfluss und Mischung des Fluids prüfen.',
  }),
  'mixture/trim-outside': (f, show) => ({
    message: `Eine Änderung des Kraftstoffs um ${show.difference(f.trim, 'share', 0)} kann nicht von der Einspritzung des Fluids kommen.`,
    remedy: 'Zwei Züge bei gleicher Drehzahl, gleichem Ladedruck und gleichem Gemischziel vergleichen.',
  }),
};

export const mixtureNotes: NoteWordsOf<'mixture'> = {
  'mixture/loop-cuts-by-itself': (f, show) =>
    `Die Lambdaregelung nimmt von selbst ${show.quantity(f.share, 'share')} Benzin zurück: das Kraftstoffkennfeld in Ruhe lassen.`,
  'mixture/chased-trim-leans': () =>
    'Wer der Korrektur dort nachläuft, magert den Motor ab, sobald der Tank leer ist.',
  'mixture/trim-near-its-end': (f, show) =>
    `Eine Korrektur von ${show.quantity(f.share, 'share')} kommt dem nahe, was viele Steuergeräte erlauben (etwa ${show.quantity(f.limit, 'share', 0)}, Praxis): prüfen, ob sie anschlägt.`,
  'mixture/cut-by-hand': (f, show) =>
    `Hier gleicht nichts den Alkohol aus: ohne Eingriff läuft das Gemisch bei ${show.quantity(f.lambdaWithout, 'lambda', 2)}. In den Zellen, die das Fluid erreicht, ${show.quantity(f.share, 'share')} Benzin herausnehmen, als eigene Stufe.`,
  'mixture/mass-air-misses-vapour': () =>
    'Ein Luftmassenmesser vor der Düse wiegt nur Luft: weder den Alkohol noch die Kühlung dahinter sieht er.',
  'mixture/gauge-on-petrol-scale': (f, show) =>
    `Bei Lambda ${show.number(f.lambda, 2)} zeigt eine Anzeige mit der Skala ${show.number(f.scale, 1)} den Wert ${show.number(f.shown, 1)}, was auch brennt; Luft zu allem, was brennt, ist ${show.number(f.airFuel, 1)}.`,
  'mixture/targets-not-told-apart': (f, show) =>
    `Von ${show.quantity(f.from, 'lambda', 2)} auf ${show.quantity(f.to, 'lambda', 2)} bringt etwa ${show.quantity(f.cost, 'share')}: an der Leistung nicht zu unterscheiden. Nach Abgastemperatur und Klopfen wählen.`,
  'mixture/rich-costs': (f, show) =>
    `Bei ${show.quantity(f.lambda, 'lambda', 2)} zu bleiben kostet geschätzt ${show.quantity(f.low, 'share')} bis ${show.quantity(f.high, 'share')} Leistung gegenüber dem besten Gemisch dieser Mischung.`,
  'mixture/best-power-from-memory': () =>
    'Die Gemische bester Leistung sind Lehrbuchbereiche aus dem Gedächtnis: ändern, wo Besseres bekannt ist.',
  'mixture/dry-is-lean': (f, show) =>
    `Vorsicht: mit dieser Rücknahme im Kennfeld läuft der Motor bei leerem Tank oder verstopfter Düse unter Volllast mit ${show.quantity(f.lambda, 'lambda', 2)}. Die Rückfallebene muss das Benzin in Zehntelsekunden zurückbringen.`,
  'mixture/lean-breaks-engines': (f, show) =>
    `Mageres Gemisch unter Ladedruck zerstört einen Motor in Sekunden. Nichts magerer als ${show.quantity(f.leanest, 'lambda', 2)}; beim ersten Anzeichen die Stufe zurück.`,
  'mixture/arrived-clogged': (f, show) =>
    `Zu wenig kommt an: ${show.quantity(f.ratio, 'share', 0)} des Plans (${show.quantity(f.low, 'share', 0)} bis ${show.quantity(f.high, 'share', 0)}). Vor dem nächsten Zug nach verstopfter Düse oder Filter, schwacher Pumpe, leerem Tank sehen.`,
  'mixture/arrived-matched': (f, show) =>
    `Die Korrektur passt zum Plan: ${show.quantity(f.ratio, 'share', 0)} davon (${show.quantity(f.low, 'share', 0)} bis ${show.quantity(f.high, 'share', 0)}).`,
  'mixture/arrived-oversize': (f, show) =>
    `Es kommt mehr an als geplant: ${show.quantity(f.ratio, 'share', 0)} (${show.quantity(f.low, 'share', 0)} bis ${show.quantity(f.high, 'share', 0)}). Düsengröße, Druck und Mischung prüfen.`,
  'mixture/arrived-undecided': (f, show) =>
    `Die Korrektur sagt ${show.quantity(f.ratio, 'share', 0)} des Plans, doch alles von ${show.quantity(f.low, 'share', 0)} bis ${show.quantity(f.high, 'share', 0)} passt dazu: weitere Züge, oder eine Eimermessung.`,
  'mixture/water-alone': () => 'Hier erreicht kein Alkohol den Motor: das Gemisch bleibt, wie es ist.',
};
