import type { Note } from '../result/index.ts';
import type { ChosenPull } from './selection/choose-pulls.ts';

/** Beyond this an uncorrected comparison measures the day (common practice). */
const apartLimit = 0.015;
/** Beyond this no correction of a boosted engine can be trusted to the percent (common practice). */
const beyondLimit = 0.04;

/**
 * What the air between the two sides did to power, by the usual exponents of dry pressure and temperature.
 *
 * Corrected or not, a boosted engine's true dependence lies somewhere between none and the full factor: control
 * that holds manifold pressure makes up the barometer. So half of the difference is kept as doubt.
 *
 * Source: exponents 1.2 and 0.6 of ISO 1585, spark ignition, as quoted in public.
 */
export function weatherBetween(
  before: readonly ChosenPull[],
  after: readonly ChosenPull[],
): { readonly reasons: readonly Note[]; readonly remarks: readonly Note[]; readonly variance: number } {
  const b = meanAir(before);
  const a = meanAir(after);
  if (b === null || a === null) return { reasons: [], remarks: [], variance: 0 };
  const share = Math.abs(a / b - 1);
  const isCorrected = [...before, ...after].every((c) => c.pull.power.correction.standard !== 'none');
  const doubt = share / 4;
  if (isCorrected && share > beyondLimit) {
    return {
      reasons: [{ code: 'compare/weather-beyond', facts: { share } }],
      remarks: [],
      variance: doubt ** 2,
    };
  }
  if (!isCorrected && share > apartLimit) {
    return {
      reasons: [{ code: 'compare/weather-apart', facts: { share } }],
      remarks: [],
      variance: doubt ** 2,
    };
  }
  const remarks: Note[] = share > 0.002 ? [{ code: 'compare/weather-widened', facts: { share } }] : [];
  return { reasons: [], remarks, variance: doubt ** 2 };
}

/** Power that the air lets through, relative to reference air; null where any pull's air is not known. */
function meanAir(pulls: readonly ChosenPull[]): number | null {
  let sum = 0;
  for (const { pull } of pulls) {
    const air = pull.conditions;
    if (air?.ambient_C == null || air.barometer_kPa == null) return null;
    sum += (air.barometer_kPa / 99) ** 1.2 / ((air.ambient_C + 273.15) / 298) ** 0.6;
  }
  return pulls.length > 0 ? sum / pulls.length : null;
}
