import type { VerdictPhrases } from '../en/verdict-phrases.ts';

export const verdictPhrases: VerdictPhrases = {
  subjects: {
    spray: 'Die Einspritzung',
    boost: 'Ladedruck',
    spark: 'Zündung',
    mixture: 'Lambda',
    airFuel: 'Luft/Kraftstoff',
    fluid: 'Die andere Fluideinstellung',
    other: 'Die Änderung',
    nothing: 'Noch einmal fahren',
    unknown: 'Die Änderung',
  },
  fromTo: (what, from, to) => `${what} von ${from} auf ${to}`,
  gained: (size) => `brachte ${size}`,
  lost: (size) => `kostete ${size}`,
  giveOrTake: (half) => `, auf ${half} genau`,
  allOver: 'über den ganzen Bereich',
  fromUp: (speed) => `ab ${speed}`,
  upTo: (speed) => `bis ${speed}`,
  between: (from, to) => `von ${from} bis ${to}`,
  equivalent: 'machte keinen Unterschied, der zählt',
  within: (effect, half, margin) => `: ${effect}, auf ${half} genau, wobei ${margin} als gleich gilt`,
  undecidedBefore: (subject) => `${subject}: noch kann es niemand sagen, `,
  undecided: 'offen',
  soFar: (effect, half) => ` bei ${effect}, auf ${half} genau`,
  morePulls: (n) =>
    n === 1
      ? 'Ein weiterer Zug je Seite sollte es entscheiden.'
      : `${n} weitere Züge je Seite sollten es entscheiden.`,
  noNumberOfPulls: 'Weitere Züge allein würden es kaum entscheiden.',
  notComparable: 'lässt sich nicht beurteilen',
};
