export const leaning = {
  title: 'Lean on an earlier session',
  why: 'How well this car’s pulls repeated on an earlier day supports the verdicts of today, above all the first ones. It counts for no more than eight spare pulls, since days differ, and not at all where today’s pulls scatter beyond it.',
  earlier: 'Earlier session of the same car',
  choose: 'Choose a session',
  noEarlier: 'No other session was opened on this machine yet.',
  car: 'Car',
  scatter: 'One pull scatters by',
  told: 'Told by',
  sparePulls: (n: string) => `${n} spare pulls`,
  tooFew: 'That session holds too few pulls to tell how well they repeat.',
  otherCar: (there: string, here: string) =>
    `The car is called ${there} there and ${here} here. Another car, other tyres or another road repeat differently.`,
  looking: 'Reading its logs',
  now: (name: string, share: string) =>
    `Leans on ${name} now: one pull scatters by ${share}. Each verdict says whether that was used.`,
  lean: 'Lean on it',
  stop: 'Lean on today alone',
};
