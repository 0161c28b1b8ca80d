import type { QuantityId } from '../../log/index.ts';
import { quantities } from '../../log/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';
import { quantityNames } from './quantities.ts';

export const compareProblems: ProblemWordsOf<'compare'> = {};

const name = (q: QuantityId) => quantityNames[q];
const inText = (q: QuantityId) => name(q).toLowerCase();
const difference = (show: Show, delta: number, q: QuantityId) => show.difference(delta, quantities[q]);
const share = (show: Show, value: number, digits = 1) => show.quantity(value, 'share', digits);
const pulls = (n: number) => (n === 1 ? '1 pull' : `${n} pulls`);
const pull = (f: { side: 'before' | 'after'; place: number }) => `Pull ${f.place} ${f.side}`;

/** The change as a tuner calls it, for the middle of a sentence. */
export const changeWords = {
  spray: 'the spray',
  boost: 'boost',
  spark: 'spark',
  mixture: 'the mixture',
  fluid: 'the fluid',
  other: 'something else',
  nothing: 'nothing',
} as const;

const bases = {
  'engine-speed': 'engine speed',
  'vehicle-speed': 'road speed',
  'torque-channel': 'a torque channel',
  'power-channel': 'a power channel',
} as const;

export const compareNotes: NoteWordsOf<'compare'> = {
  'compare/no-pulls': (f) => `No pull counts ${f.side}.`,
  'compare/same-pull': () => 'One and the same recording stands on both sides.',
  'compare/other-gear': (f) =>
    `Another gear: ${f.before} before, ${f.after} after. Rotating parts weigh differently in each.`,
  'compare/other-gear-by-speeds': (f, show) =>
    `Another gear: engine speed over road speed moved by ${share(show, f.share)}. Rotating parts weigh differently in each.`,
  'compare/gear-open': () =>
    'Whether all pulls were in the same gear could not be compared: not every log holds a gear or the same road speed. Log road speed, or say the gear of the pulls in the car.',
  'compare/other-basis': (f) =>
    `Power comes from ${bases[f.before]} before and from ${bases[f.after]} after.`,
  'compare/other-correction': (f) => `Corrected by ${f.before} before and by ${f.after} after.`,
  'compare/other-mass': (f, show) =>
    `Another mass: ${show.quantity(f.before_kg, 'mass')} before, ${show.quantity(f.after_kg, 'mass')} after.`,
  'compare/other-rolling': (f, show) =>
    `Engine speed over road speed moved by ${share(show, f.share)}: another tyre or pressure, or more slip.`,
  'compare/other-direction': () =>
    'Driven one way before and the other way after: slope and wind can’t be told from the change.',
  'compare/no-common-band': () => 'The pulls share no band of engine speeds wide enough to compare.',
  'compare/weather-apart': (f, show) =>
    `The air alone would change power by about ${share(show, f.share)}, and no correction is set.`,
  'compare/weather-beyond': (f, show) =>
    `The air differs by about ${share(show, f.share)} of power: more than a correction can carry on a boosted engine.`,
  'compare/also-moved': (f, show) => {
    const said = `${name(f.quantity)} moved by ${difference(show, f.delta, f.quantity)}`;
    return f.declared === 'nothing'
      ? `${said} although nothing was to change: this is not the same setup.`
      : `${said} although only ${changeWords[f.declared]} was to change: not comparable as that step.`;
  },
  'compare/more-than-one': (f) => `More than one thing moved: ${f.quantities.map(inText).join(', ')}.`,
  'compare/declared-missing': (f, show) =>
    f.size === null
      ? `The declared change of ${changeWords[f.kind]} is not in the data: ${inText(f.quantity)} moved by ${difference(show, f.delta, f.quantity)}.`
      : `Declared ${difference(show, f.size, f.quantity)} of ${inText(f.quantity)}, logged ${difference(show, f.delta, f.quantity)}: the change is not in the data.`,
  'compare/knock-retard': (f, show) =>
    `Knock control was at work: ${show.quantity(Math.abs(f.before), 'angle')} of retard before, ${show.quantity(Math.abs(f.after), 'angle')} after.`,
  'compare/knock-events': (f, show) =>
    `Knock events a pull: ${show.number(f.before, 1)} before, ${show.number(f.after, 1)} after.`,
  'compare/limiter': (f) => `A limiter was active in ${pulls(f.pulls)} ${f.side}.`,
  'compare/intervention': (f) => `Traction or torque control cut in during ${pulls(f.pulls)} ${f.side}.`,
  'compare/wheel-spin': (f) => `The wheels spun in ${pulls(f.pulls)} ${f.side}.`,
  'compare/intake-apart': (f, show) =>
    `Intake air stands ${show.difference(f.delta, 'temperatureDifference', 0)} apart: too far to correct for.`,

  'compare/one-pull': () => 'One pull a side: nobody can tell a change from the scatter between two pulls.',
  'compare/no-repeatability': () => 'Too few pulls to know how well they repeat.',
  'compare/open': (f, show) =>
    `Anything from ${show.difference(f.low, 'power')} to ${show.difference(f.high, 'power')} is still possible; under ${show.quantity(f.margin, 'power')} counts as equal.`,

  'compare/left-out-incomplete': (f) => `${pull(f)} is left out: it was lifted or cut short.`,
  'compare/left-out-no-power': (f) => `${pull(f)} is left out: no power could be reckoned for it.`,
  'compare/left-out-short': (f) =>
    `${pull(f)} is left out: it covers much less engine speed than the others.`,
  'compare/left-out-gear': (f) => `${pull(f)} is left out: it was driven in gear ${f.gear}.`,
  'compare/left-out-gear-by-speeds': (f, show) =>
    `${pull(f)} is left out: its engine speed over road speed is off by ${share(show, f.share)} from the others, as in another gear.`,
  'compare/left-out-twice': (f) => `${pull(f)} is left out: it is the same recording as an earlier one.`,
  'compare/left-out-knock': (f, show) =>
    `${pull(f)} is left out: knock control took ${show.quantity(f.retard_rad, 'angle')} of spark. Look at it before the next pull.`,
  'compare/left-out-spin': (f) => `${pull(f)} is left out: the wheels spun.`,
  'compare/left-out-limiter': (f) => `${pull(f)} is left out: a limiter was active in it.`,
  'compare/left-out-intervention': (f) => `${pull(f)} is left out: traction or torque control cut in.`,
  'compare/left-out-outlier': (f, show) =>
    `${pull(f)} is left out: it stands ${show.difference(f.share, 'share')} from its fellows, which chance would hardly do.`,

  'compare/intake-corrected': (f, show) =>
    `Intake air differs by ${show.difference(f.delta, 'temperatureDifference')}: power was corrected by ${show.difference(f.correction, 'share')}, give or take ${share(show, f.half)}.`,
  'compare/boost-corrected': (f, show) =>
    `Manifold pressure differs by ${show.difference(f.share, 'share')}: power was corrected by ${show.difference(f.correction, 'share')}, give or take ${share(show, f.half)}.`,
  'compare/drift-corrected': (f, show) =>
    `The day drifts by about ${show.difference(f.perPull, 'share', 2)} a pull: ${show.difference(f.correction, 'share')} was allowed for it.`,
  'compare/drive-again': (f) =>
    `${f.entries} entries and none driven twice: drive an earlier one again, so that a drifting day shows.`,
  'compare/directions-averaged': () =>
    'Both directions were driven; what the road gives and takes is averaged out.',
  'compare/weather-widened': (f, show) =>
    `The air differs by about ${share(show, f.share)} of power; the interval is widened for it.`,
  'compare/prior-used': (f, show) =>
    `Repeatability leans on earlier sessions of this car: ${share(show, f.deviationShare, 2)} a pull.`,
  'compare/prior-refused': (f, show) =>
    `Today’s pulls scatter by ${share(show, f.foundShare, 2)}, more than the ${share(show, f.deviationShare, 2)} of earlier sessions: these are not used.`,
  'compare/pooled': (f) => `Repeatability is pooled over ${f.entries} entries of the session.`,
  'compare/own-repeatability': (f, show) =>
    `These pulls scatter by ${share(show, f.ownShare, 2)}, the session’s others by ${share(show, f.sessionShare, 2)}: judged on their own scatter alone.`,
  'compare/own-scatter': (f, show) =>
    `The two sides scatter differently, ${share(show, f.beforeShare, 2)} before and ${share(show, f.afterShare, 2)} after: each is taken with its own.`,
  'compare/single-pull-side': (f) => `Only one pull ${f.side}: an odd one could not be told.`,
  'compare/band-cut': (f, show) =>
    `The pulls cover only ${show.bare(f.used[0], 'engineSpeed')} to ${show.quantity(f.used[1], 'engineSpeed')} of the band asked for.`,
  'compare/from-spooled': (f, show) =>
    `Judged from ${show.quantity(f.from, 'engineSpeed')} up, where boost is up in every pull; they begin at ${show.quantity(f.covered, 'engineSpeed')}.`,
  'compare/witness-lost': (f) =>
    `${name(f.quantity)} was not logged ${f.side}: whether it moved rests on the notes alone.`,
  'compare/small-but-real': (f, show) =>
    `A small difference is real all the same: ${show.differenceWithHalf(f.effect, f.half, 'power')}, inside the margin.`,
  'compare/declared-unseen': (f) =>
    `No channel shows ${changeWords[f.kind]}: that the change happened rests on the notes alone.`,
  'compare/declared-partly': (f, show) => {
    const said = `Declared ${difference(show, f.size, f.quantity)} of ${inText(f.quantity)}, logged ${difference(show, f.delta, f.quantity)}`;
    return f.retard === null ? `${said}: something took the rest.` : `${said}: retard took the rest.`;
  },
  'compare/moved-named': (f, show) =>
    `Nothing was declared; ${inText(f.quantity)} moved by ${difference(show, f.delta, f.quantity)}.`,
  'compare/knock-heard': (f, show) =>
    `Knock events a pull: ${show.number(f.before, 1)} before, ${show.number(f.after, 1)} after. Look at them before going on.`,
};
