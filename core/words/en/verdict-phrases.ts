/** What a verdict is said with, `size` and `half` ready with their units. */
export const verdictPhrases = {
  subjects: {
    spray: 'The spray',
    boost: 'Boost',
    spark: 'Spark',
    mixture: 'Lambda',
    airFuel: 'Air/fuel',
    fluid: 'The other fluid setting',
    other: 'The change',
    nothing: 'Driving it again',
    unknown: 'The change',
  },
  fromTo: (what: string, from: string, to: string) => `${what} from ${from} to ${to}`,
  gained: (size: string) => `gained ${size}`,
  lost: (size: string) => `lost ${size}`,
  giveOrTake: (half: string) => `, give or take ${half}`,
  allOver: 'over the whole band',
  fromUp: (speed: string) => `from ${speed} up`,
  upTo: (speed: string) => `up to ${speed}`,
  between: (from: string, to: string) => `from ${from} to ${to}`,
  equivalent: 'made no difference that matters',
  within: (effect: string, half: string, margin: string) =>
    `: ${effect}, give or take ${half}, where ${margin} counts as equal`,
  undecidedBefore: (subject: string) => `${subject}: nobody can tell yet, `,
  undecided: 'undecided',
  soFar: (effect: string, half: string) => ` at ${effect}, give or take ${half}`,
  morePulls: (n: number) =>
    n === 1 ? '1 more pull on each side should decide it.' : `${n} more pulls on each side should decide it.`,
  noNumberOfPulls: 'More pulls alone would hardly decide it.',
  notComparable: 'can’t be judged',
};

export type VerdictPhrases = typeof verdictPhrases;
