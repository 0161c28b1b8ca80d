import type { QuantityId } from '../../log/index.ts';
import { quantities } from '../../log/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';
import { quantityNames } from './quantities.ts';

export const compareProblems: ProblemWordsOf<'compare'> = {};

const name = (q: QuantityId) => quantityNames[q];
const difference = (show: Show, delta: number, q: QuantityId) => show.difference(delta, quantities[q]);
const share = (show: Show, value: number, digits = 1) => show.quantity(value, 'share', digits);
const sides = { before: 'vorher', after: 'nachher' } as const;
const inPulls = (n: number) => (n === 1 ? 'einem Zug' : `${n} Zügen`);
const pull = (f: { side: 'before' | 'after'; place: number }) => `Zug ${f.place} ${sides[f.side]}`;

/** Die Änderung, wie sie im Satz steht. */
export const changeWords = {
  spray: 'die Einspritzung',
  boost: 'der Ladedruck',
  spark: 'die Zündung',
  mixture: 'das Gemisch',
  fluid: 'das Fluid',
  other: 'etwas anderes',
  nothing: 'nichts',
} as const;

const bases = {
  'engine-speed': 'der Drehzahl',
  'vehicle-speed': 'der Geschwindigkeit',
  'torque-channel': 'einem Drehmomentkanal',
  'power-channel': 'einem Leistungskanal',
} as const;

export const compareNotes: NoteWordsOf<'compare'> = {
  'compare/no-pulls': (f) => `Kein Zug zählt ${sides[f.side]}.`,
  'compare/same-pull': () => 'Auf beiden Seiten steht ein und dieselbe Aufzeichnung.',
  'compare/other-gear': (f) =>
    `Anderer Gang: ${f.before} vorher, ${f.after} nachher. Drehende Massen zählen in jedem anders.`,
  'compare/other-gear-by-speeds': (f, show) =>
    `Anderer Gang: Drehzahl zu Geschwindigkeit hat sich um ${share(show, f.share)} verschoben. Drehende Massen zählen in jedem anders.`,
  'compare/gear-open': () =>
    'Ob alle Züge im gleichen Gang waren, ließ sich nicht vergleichen: nicht jedes Log enthält einen Gang oder dieselbe Geschwindigkeit. Geschwindigkeit mit aufzeichnen oder den Gang der Züge beim Auto angeben.',
  'compare/other-basis': (f) =>
    `Die Leistung kommt vorher aus ${bases[f.before]} und nachher aus ${bases[f.after]}.`,
  'compare/other-correction': (f) => `Vorher nach ${f.before} korrigiert, nachher nach ${f.after}.`,
  'compare/other-mass': (f, show) =>
    `Andere Masse: ${show.quantity(f.before_kg, 'mass')} vorher, ${show.quantity(f.after_kg, 'mass')} nachher.`,
  'compare/other-rolling': (f, show) =>
    `Drehzahl zu Geschwindigkeit hat sich um ${share(show, f.share)} verschoben: anderer Reifen oder Luftdruck, oder mehr Schlupf.`,
  'compare/other-direction': () =>
    'Vorher in die eine, nachher in die andere Richtung gefahren: Steigung und Wind sind von der Änderung nicht zu trennen.',
  'compare/no-common-band': () =>
    'Die Züge teilen keinen Drehzahlbereich, der zum Vergleichen breit genug ist.',
  'compare/weather-apart': (f, show) =>
    `Die Luft allein würde die Leistung um etwa ${share(show, f.share)} ändern, und es ist keine Korrektur gewählt.`,
  'compare/weather-beyond': (f, show) =>
    `Die Luft unterscheidet sich um etwa ${share(show, f.share)} der Leistung: mehr, als eine Korrektur bei einem aufgeladenen Motor trägt.`,
  'compare/also-moved': (f, show) => {
    const said = `${name(f.quantity)} hat sich um ${difference(show, f.delta, f.quantity)} verschoben`;
    return f.declared === 'nothing'
      ? `${said}, obwohl sich nichts ändern sollte: das ist nicht derselbe Stand.`
      : `${said}, obwohl sich nur ${changeWords[f.declared]} ändern sollte: als diese eine Änderung nicht vergleichbar.`;
  },
  'compare/more-than-one': (f) => `Mehr als eines hat sich geändert: ${f.quantities.map(name).join(', ')}.`,
  'compare/declared-missing': (f, show) =>
    f.size === null
      ? `Die angesagte Änderung (${changeWords[f.kind]}) steht nicht in den Daten: ${name(f.quantity)} ${difference(show, f.delta, f.quantity)}.`
      : `${name(f.quantity)}: ${difference(show, f.size, f.quantity)} angesagt, ${difference(show, f.delta, f.quantity)} aufgezeichnet: die Änderung steht nicht in den Daten.`,
  'compare/knock-retard': (f, show) =>
    `Die Klopfregelung hat eingegriffen: ${show.quantity(Math.abs(f.before), 'angle')} Spätverstellung vorher, ${show.quantity(Math.abs(f.after), 'angle')} nachher.`,
  'compare/knock-events': (f, show) =>
    `Klopfereignisse je Zug: ${show.number(f.before, 1)} vorher, ${show.number(f.after, 1)} nachher.`,
  'compare/limiter': (f) => `Ein Begrenzer war ${sides[f.side]} in ${inPulls(f.pulls)} aktiv.`,
  'compare/intervention': (f) =>
    `Traktions- oder Momentenregelung griff ${sides[f.side]} in ${inPulls(f.pulls)} ein.`,
  'compare/wheel-spin': (f) => `Die Räder drehten ${sides[f.side]} in ${inPulls(f.pulls)} durch.`,
  'compare/intake-apart': (f, show) =>
    `Die Ansaugluft liegt ${show.difference(f.delta, 'temperatureDifference', 0)} auseinander: zu weit für eine Korrektur.`,

  'compare/one-pull': () =>
    'Je ein Zug: niemand kann eine Änderung von der Streuung zwischen zwei Zügen unterscheiden.',
  'compare/no-repeatability': () => 'Zu wenige Züge, um zu wissen, wie gut sie sich wiederholen.',
  'compare/open': (f, show) =>
    `Alles von ${show.difference(f.low, 'power')} bis ${show.difference(f.high, 'power')} ist noch möglich; unter ${show.quantity(f.margin, 'power')} gilt als gleich.`,

  'compare/left-out-incomplete': (f) => `${pull(f)} zählt nicht: abgebrochen oder gelupft.`,
  'compare/left-out-no-power': (f) => `${pull(f)} zählt nicht: keine Leistung zu berechnen.`,
  'compare/left-out-short': (f) => `${pull(f)} zählt nicht: viel weniger Drehzahlbereich als die anderen.`,
  'compare/left-out-gear': (f) => `${pull(f)} zählt nicht: im ${f.gear}. Gang gefahren.`,
  'compare/left-out-gear-by-speeds': (f, show) =>
    `${pull(f)} zählt nicht: Drehzahl zu Geschwindigkeit weicht um ${share(show, f.share)} von den anderen ab, wie in einem anderen Gang.`,
  'compare/left-out-twice': (f) => `${pull(f)} zählt nicht: dieselbe Aufzeichnung wie ein früherer.`,
  'compare/left-out-knock': (f, show) =>
    `${pull(f)} zählt nicht: die Klopfregelung nahm ${show.quantity(f.retard_rad, 'angle')} Zündung zurück. Vor dem nächsten Zug ansehen.`,
  'compare/left-out-spin': (f) => `${pull(f)} zählt nicht: die Räder drehten durch.`,
  'compare/left-out-limiter': (f) => `${pull(f)} zählt nicht: ein Begrenzer war aktiv.`,
  'compare/left-out-intervention': (f) =>
    `${pull(f)} zählt nicht: Traktions- oder Momentenregelung griff ein.`,
  'compare/left-out-outlier': (f, show) =>
    `${pull(f)} zählt nicht: er liegt ${show.difference(f.share, 'share')} neben den anderen, was der Zufall kaum tut.`,

  'compare/intake-corrected': (f, show) =>
    `Die Ansaugluft unterscheidet sich um ${show.difference(f.delta, 'temperatureDifference')}: die Leistung wurde um ${show.difference(f.correction, 'share')} korrigiert, auf ${share(show, f.half)} genau.`,
  'compare/boost-corrected': (f, show) =>
    `Der Saugrohrdruck unterscheidet sich um ${show.difference(f.share, 'share')}: die Leistung wurde um ${show.difference(f.correction, 'share')} korrigiert, auf ${share(show, f.half)} genau.`,
  'compare/drift-corrected': (f, show) =>
    `Der Tag driftet um etwa ${show.difference(f.perPull, 'share', 2)} je Zug: ${show.difference(f.correction, 'share')} wurden dafür angesetzt.`,
  'compare/drive-again': (f) =>
    `${f.entries} Einträge und keiner zweimal gefahren: einen früheren noch einmal fahren, damit ein driftender Tag sich zeigt.`,
  'compare/directions-averaged': () =>
    'In beide Richtungen gefahren; was die Straße gibt und nimmt, ist herausgemittelt.',
  'compare/weather-widened': (f, show) =>
    `Die Luft unterscheidet sich um etwa ${share(show, f.share)} der Leistung; das Intervall ist dafür weiter.`,
  'compare/prior-used': (f, show) =>
    `Die Wiederholbarkeit stützt sich auf frühere Sitzungen dieses Autos: ${share(show, f.deviationShare, 2)} je Zug.`,
  'compare/prior-refused': (f, show) =>
    `Die Züge von heute streuen um ${share(show, f.foundShare, 2)}, mehr als die ${share(show, f.deviationShare, 2)} früherer Sitzungen: diese zählen nicht.`,
  'compare/pooled': (f) => `Die Wiederholbarkeit stammt aus ${f.entries} Einträgen der Sitzung.`,
  'compare/own-repeatability': (f, show) =>
    `Diese Züge streuen um ${share(show, f.ownShare, 2)}, die übrigen der Sitzung um ${share(show, f.sessionShare, 2)}: nur nach der eigenen Streuung beurteilt.`,
  'compare/own-scatter': (f, show) =>
    `Die Seiten streuen verschieden, ${share(show, f.beforeShare, 2)} vorher und ${share(show, f.afterShare, 2)} nachher: jede zählt mit ihrer eigenen.`,
  'compare/single-pull-side': (f) => `Nur ein Zug ${sides[f.side]}: ein Ausreißer wäre nicht zu erkennen.`,
  'compare/band-cut': (f, show) =>
    `Die Züge decken nur ${show.bare(f.used[0], 'engineSpeed')} bis ${show.quantity(f.used[1], 'engineSpeed')} des gewünschten Bereichs.`,
  'compare/from-spooled': (f, show) =>
    `Beurteilt ab ${show.quantity(f.from, 'engineSpeed')}, wo der Ladedruck in jedem Zug steht; sie beginnen bei ${show.quantity(f.covered, 'engineSpeed')}.`,
  'compare/witness-lost': (f) =>
    `${name(f.quantity)} wurde ${sides[f.side]} nicht aufgezeichnet: Ob es sich bewegt hat, beruht allein auf den Notizen.`,
  'compare/small-but-real': (f, show) =>
    `Ein kleiner Unterschied ist trotzdem echt: ${show.differenceWithHalf(f.effect, f.half, 'power')}, innerhalb der Spanne.`,
  'compare/declared-unseen': (f) =>
    `Kein Kanal zeigt es (${changeWords[f.kind]}): dass die Änderung geschah, steht nur in den Notizen.`,
  'compare/declared-partly': (f, show) => {
    const said = `${name(f.quantity)}: ${difference(show, f.size, f.quantity)} angesagt, ${difference(show, f.delta, f.quantity)} aufgezeichnet`;
    return f.retard === null
      ? `${said}: etwas nahm den Rest.`
      : `${said}: die Spätverstellung nahm den Rest.`;
  },
  'compare/moved-named': (f, show) =>
    `Nichts war angesagt; ${name(f.quantity)} hat sich um ${difference(show, f.delta, f.quantity)} verschoben.`,
  'compare/knock-heard': (f, show) =>
    `Klopfereignisse je Zug: ${show.number(f.before, 1)} vorher, ${show.number(f.after, 1)} nachher. Vor dem Weitermachen ansehen.`,
};
