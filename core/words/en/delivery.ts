import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const deliveryProblems: ProblemWordsOf<'delivery'> = {
  'delivery/no-pressure-left': (f, show) => ({
    message: `${show.span(f.pressureDifference, 'fluidPressure')} is left across the nozzle: nothing flows.`,
    remedy: 'Use a stronger pump, or spray where the pressure is lower.',
  }),
  'delivery/pump-weaker-than-boost': (f, show) => ({
    message: `The pump reaches ${show.quantity(f.available, 'fluidPressure')} with its outlet shut; at ${show.quantity(f.boost, 'boost')} of boost, with the check valve, it needs more than ${show.quantity(f.needed, 'fluidPressure')}. No fluid would arrive.`,
    remedy: 'Use a stronger pump, raise its set pressure, or plan with less boost.',
  }),
  'delivery/nozzle-flow-not-positive': (f, show) => ({
    message: `Nozzle “${f.name}” is rated at ${show.quantity(f.flow, 'volumeFlow')}: a flow must be above zero.`,
    remedy: 'Enter the flow that is stamped on it or stands in its data sheet.',
  }),
  'delivery/nozzle-pressure-not-positive': (f, show) => ({
    message: `Nozzle “${f.name}” is rated at a pressure of ${show.span(f.pressureDifference, 'fluidPressure')}: that must be above zero.`,
    remedy: `Enter the pressure that belongs to its rated flow, often ${show.span(7e5, 'fluidPressure', 0)}.`,
  }),
  'delivery/no-nozzle': () => ({
    message: 'The list of nozzles is empty, so there is nothing to choose from.',
    remedy: 'Enter at least one nozzle: its rated flow, and the pressure it is rated at.',
  }),
  'delivery/pump-unknown': () => ({
    message: 'The pump is not known yet.',
    remedy:
      'Enter two numbers, the pressure with the outlet shut and the flow with it open, or two points of its curve.',
  }),
  'delivery/pump-number-negative': (f, show) => ({
    message: `A point of the pump’s curve lies below zero: ${show.quantity(f.pressure, 'fluidPressure')}, ${show.quantity(f.flow, 'volumeFlow')}.`,
    remedy: 'Enter pressures over ambient and flows as positive numbers.',
  }),
  'delivery/pump-curve-rises': (f, show) => ({
    message: `At ${show.quantity(f.pressure, 'fluidPressure')} the pump’s curve has ${show.quantity(f.flow, 'volumeFlow')}, not less than the ${show.quantity(f.previousFlow, 'volumeFlow')} before it: against more pressure a pump delivers less.`,
    remedy: 'Check the points: two may be swapped, or entered twice.',
  }),
  'delivery/set-pressure-missing': () => ({
    message: 'The pump is held by a bypass or regulator, but the pressure it is set to is missing.',
    remedy: 'Enter the set pressure, or say that nothing limits the pump.',
  }),
  'delivery/bucket-no-amount': (f) => ({
    message: `Point ${f.point} of the bucket test has neither a volume nor a mass.`,
    remedy: 'Enter what was in the bottle, read or weighed.',
  }),
  'delivery/bucket-not-measurable': (f, show) => ({
    message: `Point ${f.point} of the bucket test, at a setting of ${show.quantity(f.setting, 'share', 0)}, can’t be compared: nothing should flow there, or nothing was caught.`,
    remedy: 'Leave the point out, or measure at a higher setting.',
  }),
  'delivery/bucket-empty': () => ({
    message: 'The bucket test has no point to fit.',
    remedy: 'Spray into a measuring bottle for a noted time, and enter volume or mass.',
  }),
};

export const deliveryNotes: NoteWordsOf<'delivery'> = {
  'delivery/bucket-point-off': (f, show) =>
    `Point ${f.point} of the bucket test doesn’t fit: ${show.quantity(f.measured, 'volumeFlow')} measured, ${show.quantity(f.fitted, 'volumeFlow')} expected from the others, ${show.number(f.times, 1)} times its own uncertainty. It is left out; measure it again.`,
  'delivery/bucket-points-disagree': (f, show) =>
    `The points of the bucket test disagree by ${show.number(f.times, 1)} times their uncertainty, and too few are left to tell which is off. Measure once more.`,
  'delivery/bucket-overrides': (f, show) =>
    `The bucket test overrides the ratings: ${show.number(f.factor, 3)} times the rated flow, from ${f.points} ${f.points === 1 ? 'point' : 'points'}.`,
  'delivery/bucket-far-from-rating': (f, show) =>
    `Measured flow is ${show.number(f.factor, 2)} times what the ratings say. Check nozzle, filter, pressure and the unit of the rating before you trust either.`,
  'delivery/line-turbulent': (f, show) =>
    `Flow in the line is no longer laminar (Reynolds number ${show.number(f.reynolds)}): loss grows with nearly the square of flow.`,
  'delivery/line-takes-much': (f, show) =>
    `The line takes ${show.span(f.loss, 'fluidPressure')} while ${show.span(f.pressureDifference, 'fluidPressure')} is left at the nozzle. A wider or shorter line gives it back.`,
  'delivery/pump-curve-unknown': (f, show) =>
    `The pump’s own curve isn’t known: it is taken to hold ${show.quantity(f.setPressure, 'fluidPressure')} at any flow. A bucket test at full setting shows whether it does.`,
  'delivery/pump-droops': (f, show) =>
    `At this flow the pump holds ${show.quantity(f.pressure, 'fluidPressure')} and not the ${show.quantity(f.setPressure, 'fluidPressure')} it is set to: it is at its end.`,
  'delivery/fluid-arrives-late': (f, show) =>
    `The line has to fill first (${show.quantity(f.volume, 'smallVolume')}): fluid leaves the nozzle ${show.quantity(f.delay, 'time', 1)} after the start point at ${show.quantity(f.boostAtStart, 'boost')}, when boost is at ${show.quantity(f.boostThen, 'boost')}.`,
  'delivery/line-kept-full': () =>
    'A check valve at the nozzle keeps the line full, so fluid comes without delay worth counting.',
};
