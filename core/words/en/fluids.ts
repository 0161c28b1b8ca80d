import type { TemperatureProperty } from '../../fluids/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

const properties: Record<TemperatureProperty, string> = {
  density: 'Density',
  latentHeat: 'Latent heat',
  vapourPressure: 'Vapour pressure',
  liquidHeatCapacity: 'Heat capacity of the liquid',
  vapourHeatCapacity: 'Heat capacity of the vapour',
  viscosity: 'Viscosity',
};
const parts = { water: 'water', methanol: 'methanol', ethanol: 'ethanol', petrol: 'petrol' } as const;

export const fluidsProblems: ProblemWordsOf<'fluids'> = {
  'fluids/temperature-outside': (f, show) => ({
    message: `${properties[f.property]} at ${show.quantity(f.temperature, 'temperature')} is outside the published range, ${show.quantity(f.from, 'temperature')} to ${show.quantity(f.to, 'temperature')}.`,
    remedy: 'Enter the temperature of the liquid itself, within that range.',
  }),
  'fluids/share-negative': (f, show) => ({
    message: `The share of ${parts[f.substance]} is ${show.quantity(f.share, 'share')}: it can’t be less than nothing.`,
    remedy: 'Enter a share from 0 to 100 %.',
  }),
  'fluids/shares-over-whole': (f, show) => ({
    message: `The shares add up to ${show.quantity(f.sum, 'share')}: more than the whole.`,
    remedy: 'Lower one of them until they add up to 100 % or less; water is the rest.',
  }),
  'fluids/share-missing': (f) => ({
    message: `The share of ${parts[f.substance]} is not a number.`,
    remedy: 'Enter a number, such as 50.',
  }),
  'fluids/reading-outside': (f, show) => ({
    message: `A density of ${show.quantity(f.density, 'density', 4)} at ${show.quantity(f.temperature, 'temperature')} fits no mix of water and ${parts[f.alcohol]}: that has ${show.quantity(f.lowest, 'density', 4)} to ${show.quantity(f.highest, 'density', 4)}.`,
    remedy:
      'Check the reading and the temperature of the fluid. Dye, soap or sweetener in a bought fluid moves it too.',
  }),
  'fluids/nothing-burns': () => ({
    message: 'There is neither petrol nor alcohol in this blend, so it has no air/fuel ratio.',
    remedy: 'Add the petrol or the alcohol that burns.',
  }),
};

export const fluidsNotes: NoteWordsOf<'fluids'> = {
  'fluids/burns-at-ambient': (f, show) =>
    `This mix can catch fire where it is kept: its vapour lights from about ${show.quantity(f.flashPoint, 'temperature', 0)}, and it is ${show.quantity(f.ambient, 'temperature', 0)}. Keep it closed, vented outdoors, away from flame and sparks.`,
  'fluids/burns-when-warmer': (f, show) =>
    `At ${show.quantity(f.ambient, 'temperature', 0)} its vapour is below the estimated flash point of about ${show.quantity(f.flashPoint, 'temperature', 0)} (cautious value). Warmth, mist or a hot part still lights it.`,
  'fluids/does-not-burn': () => 'Nothing in this fluid burns.',
  'fluids/freezes-at-ambient': (f, show) =>
    `At ${show.quantity(f.ambient, 'temperature', 0)} ice forms: this mix freezes from ${show.quantity(f.freezingPoint, 'temperature', 0)}. Ice blocks the line and the nozzle.`,
  'fluids/methanol-is-toxic': (f, show) =>
    `Methanol poisons through skin, breath and mouth and can blind; the limit in air is ${show.number(f.exposureLimit_ppm)} ppm, and smell gives no warning in time. Gloves, goggles, open air.`,
  'fluids/flame-unseen': () => 'A methanol flame can’t be seen by day.',
  'fluids/strong-mix': (f, show) =>
    `${show.quantity(f.share, 'share', 0)} alcohol by volume: carry it as a flammable liquid. Half and half is usual (common practice).`,
  'fluids/three-parts-estimated': (f) =>
    `Values for ${f.alcohols.map((a) => parts[a]).join(' and ')} in one mix are interpolated between the two pairs with water.`,
  'fluids/contraction': (f, show) =>
    `Poured together, ${show.quantity(f.share, 'share')} of the volume is lost: measure each part before it goes in.`,
};
