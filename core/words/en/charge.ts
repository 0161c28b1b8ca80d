import type { ChargeDefault } from '../../charge/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';

const missing = {
  displacement: 'displacement',
  compressionRatio: 'compression ratio',
  octane: 'octane of the petrol',
  engineSpeed: 'engine speed',
  boost: 'boost',
} as const;

const defaults: Record<ChargeDefault, (value: number, show: Show) => string> = {
  compressorEfficiency: (v, show) => `Compressor efficiency taken as ${show.quantity(v, 'share', 0)}`,
  coolerEffectiveness: (v, show) => `Cooler effectiveness taken as ${show.quantity(v, 'share', 0)}`,
  coolerLoss: (v, show) => `Pressure loss of the cooler taken as ${show.span(v, 'boost')}`,
  ambientTemperature: (v, show) => `Air of the day taken as ${show.quantity(v, 'temperature', 0)}`,
  barometer: (v, show) => `Barometer taken as ${show.quantity(v, 'pressure')}`,
  relativeHumidity: (v, show) => `Relative humidity taken as ${show.quantity(v, 'share', 0)}`,
  volumetricEfficiency: (v, show) => `Volumetric efficiency taken as ${show.quantity(v, 'share', 0)}`,
  intakeClosing: (v, show) =>
    `Inlet valve taken to shut ${show.quantity(v, 'angle', 0)} after bottom dead centre`,
  compressionRatio: (v, show) => `Compression ratio taken as ${show.number(v, 1)}`,
  rodRatio: (v, show) => `Rod taken as ${show.number(v, 1)} times the crank radius`,
  octane: (v, show) => `Octane of the petrol taken as ${show.number(v)}`,
  lambda: (v, show) => `Mixture taken as ${show.quantity(v, 'lambda', 2)}`,
  spark: (v, show) =>
    `Spark at the shown point taken as ${show.quantity(v, 'angle', 0)} before top dead centre`,
};

export const chargeProblems: ProblemWordsOf<'charge'> = {
  'charge/pressure-not-positive': (f, show) => ({
    message: `${show.quantity(f.pressure, 'pressure')} is no absolute pressure.`,
    remedy: 'Enter pressures of the air as absolute, boost as gauge.',
  }),
  'charge/humidity-outside': (f, show) => ({
    message: `A relative humidity of ${show.quantity(f.relativeHumidity, 'share', 0)} can’t be.`,
    remedy: 'Enter it between 0 and 100 %.',
  }),
  'charge/pressure-ratio-below-one': (f, show) => ({
    message: `The compressor would lower the pressure, from ${show.quantity(f.inlet, 'pressure')} to ${show.quantity(f.outlet, 'pressure')}.`,
    remedy: 'Check barometer and boost: boost is gauge, over the air of the day.',
  }),
  'charge/share-outside': (f, show) => ({
    message: `${f.what === 'compressorEfficiency' ? 'A compressor efficiency' : 'A cooler effectiveness'} of ${show.quantity(f.share, 'share', 0)} can’t be.`,
    remedy: 'Enter it between 0 and 100 %: 65 to 75 % is usual.',
  }),
  'charge/loss-above-pressure': (f, show) => ({
    message: `The cooler would lose ${show.span(f.loss, 'pressure')} of ${show.quantity(f.pressure, 'pressure')}.`,
    remedy: `Enter the loss across the cooler alone: ${show.span(3e3, 'pressure')} to ${show.span(15e3, 'pressure')} is usual.`,
  }),
  'charge/colder-than-known': (f, show) => ({
    message: `With fluid of ${show.quantity(f.fluidOverAir, 'share')} of the air’s mass the charge would fall below ${show.quantity(f.lowest, 'temperature', 0)}.`,
    remedy: 'Check fluid flow and air of the day.',
  }),
  'charge/engine-number-missing': (f) => ({
    message: `The ${missing[f.what]} is missing.`,
    remedy: 'Enter it in the setup: heat and knock headroom need it.',
  }),
  'charge/spark-outside': (f, show) => ({
    message: `A spark of ${show.quantity(f.spark, 'angle', 0)} before top dead centre lies outside what the knock sums cover.`,
    remedy: 'Enter it between 20° after and 60° before top dead centre.',
  }),
};

export const chargeNotes: NoteWordsOf<'charge'> = {
  'charge/air-is-full': (f, show) =>
    `The air is full at ${show.quantity(f.temperature, 'temperature', 0)}: ${show.quantity(f.evaporatedShare, 'share', 0)} of the fluid has evaporated, more would stay liquid.`,
  'charge/drops-outlive-the-way': (f, show) =>
    `The mean drop needs ${Number.isFinite(f.lifetime) ? show.quantity(f.lifetime, 'time') : 'for ever'}, its way to the valve takes ${show.number(f.residence * 1e3)} ms: some ${show.quantity(f.share, 'share', 0)} of the fluid has time to evaporate before it, the rest cools in the cylinder or wets the wall.`,
  'charge/drop-size-practice': (f, show) =>
    `Mean drop size taken as ${show.number(f.diameter * 1e6)} µm (common practice: 50 to 150).`,
  'charge/way-unknown': (f, show) =>
    `Way from nozzle to valve not given: taken as usual for this place, ${show.number(f.residence * 1e3)} ms.`,
  'charge/practice-default': (f, show) => `${defaults[f.what](f.value, show)} (default).`,
  'charge/sensor-reads-wet': () =>
    'Drops reach the valve: a temperature sensor behind the nozzle reads its own wet surface, not the charge.',
  'charge/spray-before-cooler': () =>
    'Spray before the cooler evaporates well in hot air, but leaves the cooler less to do and can pool in it.',
  'charge/spray-before-compressor': () =>
    'Spray before the compressor lowers its work; drops wear the blades of a turbo or centrifugal compressor.',
  'charge/octane-outside-correlation': (f, show) =>
    `Octane ${show.number(f.octane)} lies outside the 80 to 100 that the knock correlation was made for: the headroom is rougher than its range says.`,
  'charge/headroom-is-relative': (f, show) =>
    f.isKnockLimited
      ? `Reckoned from ${show.quantity(f.boost, 'boost')}, where this engine knocked: the estimated room is up to the same edge, so stay short of it.`
      : `Reckoned from ${show.quantity(f.boost, 'boost')}, where this engine ran without knock: the estimated room brings it to the same distance, wherever the edge may be.`,
  'charge/headroom-capped': (f, show) =>
    f.what === 'spark'
      ? `More than ${show.quantity(f.at, 'angle', 0)} of spark is not claimed, whatever the sums say.`
      : `More than ${show.quantity(f.at, 'boost')} of boost is not claimed, whatever the sums say.`,
};
