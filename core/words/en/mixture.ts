import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const mixtureProblems: ProblemWordsOf<'mixture'> = {
  'mixture/lambda-outside': (f, show) => ({
    message: `A lambda of ${show.number(f.lambda, 2)} is no mixture that an engine runs on.`,
    remedy: 'Enter lambda, not the reading of an air/fuel scale: 12.5 on a petrol scale is 0.85.',
  }),
  'mixture/air-not-positive': (f, show) => ({
    message: `An air flow of ${show.quantity(f.airFlow, 'massFlow')} leaves nothing to mix.`,
    remedy: 'Check power, displacement or boost in the setup.',
  }),
  'mixture/no-alcohol-to-see': () => ({
    message: 'The fluid holds no alcohol: it burns nothing, so no fuel trim tells how much arrives.',
    remedy: 'Measure water by a bucket test, a flow sensor or by refills.',
  }),
  'mixture/alcohol-takes-all': (f, show) => ({
    message: `The alcohol alone would take ${show.quantity(f.share, 'share', 0)} of the air: no petrol would be left.`,
    remedy: 'Check fluid flow and mix.',
  }),
  'mixture/trim-outside': (f, show) => ({
    message: `A change of fuel by ${show.difference(f.trim, 'share', 0)} can’t come from the spray.`,
    remedy: 'Compare two pulls at one engine speed, boost and lambda target.',
  }),
};

export const mixtureNotes: NoteWordsOf<'mixture'> = {
  'mixture/loop-cuts-by-itself': (f, show) =>
    `The loop on lambda takes ${show.quantity(f.share, 'share')} of petrol back by itself: leave the fuelling table alone.`,
  'mixture/chased-trim-leans': () =>
    'Chasing the trim there would make the engine lean when the tank is dry.',
  'mixture/trim-near-its-end': (f, show) =>
    `A trim of ${show.quantity(f.share, 'share')} comes near what many controls allow (about ${show.quantity(f.limit, 'share', 0)}, common practice): check that it is not clipped.`,
  'mixture/cut-by-hand': (f, show) =>
    `Nothing corrects the alcohol here: left alone the mixture runs at ${show.quantity(f.lambdaWithout, 'lambda', 2)}. Take ${show.quantity(f.share, 'share')} of petrol out of the cells that the spray covers, as a step of its own.`,
  'mixture/mass-air-misses-vapour': () =>
    'A mass-air meter before the nozzle weighs air alone: it neither sees the alcohol nor the cooling behind it.',
  'mixture/gauge-on-petrol-scale': (f, show) =>
    `At lambda ${show.number(f.lambda, 2)} a gauge with a scale of ${show.number(f.scale, 1)} shows ${show.number(f.shown, 1)}, whatever burns; air over all that burns is ${show.number(f.airFuel, 1)}.`,
  'mixture/targets-not-told-apart': (f, show) =>
    `From ${show.quantity(f.from, 'lambda', 2)} to ${show.quantity(f.to, 'lambda', 2)} is worth about ${show.quantity(f.cost, 'share')}: too close to tell apart by power. Choose by exhaust heat and knock.`,
  'mixture/rich-costs': (f, show) =>
    `Staying at ${show.quantity(f.lambda, 'lambda', 2)} costs an estimated ${show.quantity(f.low, 'share')} to ${show.quantity(f.high, 'share')} of power against the best mixture of this blend.`,
  'mixture/best-power-from-memory': () =>
    'The best-power mixtures are textbook ranges from memory: change them where you know better.',
  'mixture/dry-is-lean': (f, show) =>
    `Careful: with that cut in the table a dry tank or a clogged nozzle runs the engine at ${show.quantity(f.lambda, 'lambda', 2)} under full load. The fallback must bring the petrol back within tenths of a second.`,
  'mixture/lean-breaks-engines': (f, show) =>
    `A lean mixture under boost destroys an engine in seconds. Nothing leaner than ${show.quantity(f.leanest, 'lambda', 2)}; go back by the step at the first sign.`,
  'mixture/arrived-clogged': (f, show) =>
    `Too little arrives: ${show.quantity(f.ratio, 'share', 0)} of the plan (${show.quantity(f.low, 'share', 0)} to ${show.quantity(f.high, 'share', 0)}). Look for a clogged nozzle or filter, a weak pump, an empty tank, before the next pull.`,
  'mixture/arrived-matched': (f, show) =>
    `The trim agrees with the plan: ${show.quantity(f.ratio, 'share', 0)} of it (${show.quantity(f.low, 'share', 0)} to ${show.quantity(f.high, 'share', 0)}).`,
  'mixture/arrived-oversize': (f, show) =>
    `More arrives than planned: ${show.quantity(f.ratio, 'share', 0)} (${show.quantity(f.low, 'share', 0)} to ${show.quantity(f.high, 'share', 0)}). Check nozzle size, pressure and the mix.`,
  'mixture/arrived-undecided': (f, show) =>
    `The trim says ${show.quantity(f.ratio, 'share', 0)} of the plan, but anything from ${show.quantity(f.low, 'share', 0)} to ${show.quantity(f.high, 'share', 0)} fits: more pulls, or a bucket test.`,
  'mixture/water-alone': () => 'No alcohol reaches the engine here: the mixture stays as it is.',
};
