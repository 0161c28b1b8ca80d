import type { Note } from '../result/index.ts';
import type { PullEvidence } from './evidence/pull-evidence.ts';
import type { ChosenPull } from './selection/choose-pulls.ts';
import { median } from './statistics/index.ts';

/** Beyond this an uncorrected comparison measures the day (common practice). */
const apartLimit = 0.015;
/** Beyond this no correction of a boosted engine can be trusted to the percent (common practice). */
const beyondLimit = 0.04;
/** Worth a line from here. */
const sayLimit = 0.002;

export type Weather = {
  readonly reasons: readonly Note[];
  readonly remarks: readonly Note[];
  /** Of the effect, as a share squared: doubt that no further pull shrinks. */
  readonly variance: number;
};

/**
 * What the air between the two sides did to power, by the usual exponents of pressure and temperature, from the
 * log's own barometer and ambient sensor where it has them, else from the conditions of the run.
 *
 * Corrected or not, a boosted engine's true dependence lies somewhere between none and the full factor: control
 * that holds manifold pressure makes up the barometer. So half of the difference, as an evenly spread doubt of
 * that width, widens the interval.
 *
 * Source: exponents 1.2 and 0.6 of ISO 1585, spark ignition, as quoted in public.
 */
export function weatherBetween(before: readonly ChosenPull[], after: readonly ChosenPull[]): Weather {
  const all = [...before, ...after].map((c) => c.pull);
  const pressure = Math.log(meanOf(after, barometer) / meanOf(before, barometer));
  const temperature = Math.log(meanOf(after, ambient) / meanOf(before, ambient));
  const known = (value: number) => (Number.isFinite(value) ? value : 0);
  const share = Math.abs(Math.expm1(1.2 * known(pressure) - 0.6 * known(temperature)));
  const variance = (share / 4) ** 2;
  const isCorrected = all.every((p) => p.power.correction.standard !== 'none');
  const isOutside = all.some((p) => p.power.notes.some((n) => n.code === 'power/correction-out-of-range'));
  if (isCorrected && (share > beyondLimit || (isOutside && share > apartLimit))) {
    return { reasons: [{ code: 'compare/weather-beyond', facts: { share } }], remarks: [], variance };
  }
  if (!isCorrected && share > apartLimit) {
    return { reasons: [{ code: 'compare/weather-apart', facts: { share } }], remarks: [], variance };
  }
  const remarks: Note[] = share > sayLimit ? [{ code: 'compare/weather-widened', facts: { share } }] : [];
  return { reasons: [], remarks, variance };
}

/** Mean over pulls; NaN where any pull does not know. */
function meanOf(pulls: readonly ChosenPull[], of: (pull: PullEvidence) => number): number {
  return pulls.reduce((sum, c) => sum + of(c.pull), 0) / pulls.length;
}

/** [Pa] */
function barometer(pull: PullEvidence): number {
  const logged = middle(pull.curves.barometricPressure);
  return Number.isFinite(logged) ? logged : (pull.conditions?.barometer_kPa ?? Number.NaN) * 1000;
}

/** [K] */
function ambient(pull: PullEvidence): number {
  const logged = middle(pull.curves.ambientTemperature);
  return Number.isFinite(logged) ? logged : (pull.conditions?.ambient_C ?? Number.NaN) + 273.15;
}

function middle(curve: Float64Array | undefined): number {
  return curve ? median([...curve].filter(Number.isFinite)) : Number.NaN;
}
