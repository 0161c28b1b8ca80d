import { fail, type Note, ok, type Problem, type Result } from '../../result/index.ts';
import { type FormulaCard, input } from '../explain.ts';
import type { CorrectionStandard } from '../pull-power.ts';
import { type Air, dryPressure } from './moist-air.ts';

/** What the standards take as 0 C. They print 273, 293 and 298, so that 25 C gives a factor of 1 sharp. */
const zeroCelsius = 273.15 - 273;

type Form = {
  /** @param dry, total [Pa]; kelvin counted from 273 at 0 C */
  readonly factor: (dry: number, total: number, kelvin: number) => number;
  /** Standard's own kelvin, Pa of dry pressure (total for DIN) and factor; null where none is known. */
  readonly temperature: readonly [number, number] | null;
  readonly dryPressure: readonly [number, number] | null;
  readonly range: readonly [number, number] | null;
};

/**
 * The forms with their limits as one record each, so that nobody takes the numbers and leaves the range behind.
 * Limits of ISO 1585 and SAE J1349 are from memory (UN Regulation 85, annex 5, section 5; SAE J1349 of 2004);
 * DIN 70020 is from memory and none of its limits is known to us.
 */
const forms: Record<Exclude<CorrectionStandard, 'none'>, Form> = {
  'SAE J1349': {
    factor: (dry, _total, kelvin) => 1.18 * (99_000 / dry) * Math.sqrt(kelvin / 298) - 0.18,
    temperature: [288, 308],
    dryPressure: [90_000, 105_000],
    range: [0.97, 1.03],
  },
  'ISO 1585': {
    factor: (dry, _total, kelvin) => (99_000 / dry) ** 1.2 * (kelvin / 298) ** 0.6,
    temperature: [288, 308],
    dryPressure: [90_000, 110_000],
    range: [0.93, 1.07],
  },
  'DIN 70020': {
    factor: (_dry, total, kelvin) => (101_300 / total) * Math.sqrt(kelvin / 293),
    temperature: null,
    dryPressure: null,
    range: null,
  },
};

/**
 * Factor that turns measured engine power into power in reference air: corrected = factor * measured.
 *
 *   SAE J1349 (June 1990)  1.18 (990 hPa / pd) sqrt((t + 273) / 298) - 0.18
 *   ISO 1585, UN R85       (99 kPa / pd)^1.2 ((t + 273) / 298)^0.6           spark ignition
 *   DIN 70020              (1013 hPa / p) sqrt((t + 273) / 293)              no humidity
 *
 * @param air      where the engine draws it, before any compressor: absolute pressure [Pa], temperature [K],
 *                 relative humidity 0 to 1
 * @param engine   boostRatio: absolute manifold over ambient pressure at full load; above 1.05 the remark on
 *                 boosted engines comes with the factor. The exponent from fuel per cycle and boost ratio in
 *                 ISO 1585 belongs to compression ignition and is not used here.
 * @returns        factor, dry pressure [Pa], notes: limits exceeded, boosted engine
 *
 * Valid:  SAE 15 to 35 C and 90 to 105 kPa dry (its certification practice wants the factor within 3 %); ISO 15
 *         to 35 C, 90 to 110 kPa dry, factor 0.93 to 1.07; beyond them the factor is still given, with a note.
 *         Boosted engines: a control that holds absolute manifold pressure has made up the barometer already,
 *         so that the true factor lies between 1 and this one. UN R85, supplement 7, lets the factor be 1 for
 *         supercharged engines whose control makes up for ambient conditions.
 * Errors: power/bad-air for air that cannot be.
 * Source: SAE J1349 and ISO 1585 as quoted in public (the standards' own text was not readable); DIN 70020 from
 *         memory; R85 supplement 7 from the summary of GRPE-70-02.
 * Check:  980 hPa dry and 35 C gives 1.0319 (SAE) and 1.0325 (ISO); 990 hPa and 25 C gives 1.0319 (DIN).
 */
export function correctionFactor(
  standard: CorrectionStandard,
  air: Air,
  engine: { readonly boostRatio?: number } = {},
): Result<{ readonly factor: number; readonly dryPressure: number; readonly notes: readonly Note[] }> {
  const problems = airProblems(air);
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  const dry = dryPressure(air);
  if (!(dry > 0))
    return fail({ code: 'power/bad-air', facts: { field: 'relativeHumidity', value: air.relativeHumidity } });
  if (standard === 'none') return ok({ factor: 1, dryPressure: dry, notes: [] });
  const form = forms[standard];
  const kelvin = air.temperature - zeroCelsius;
  const factor = form.factor(dry, air.pressure, kelvin);
  const notes: Note[] = [];
  const within = (
    what: 'temperature' | 'dryPressure' | 'factor',
    value: number,
    range: readonly [number, number] | null,
    offset = 0,
  ) => {
    if (range && (value < range[0] || value > range[1])) {
      const facts = {
        standard,
        what,
        value: value + offset,
        from: range[0] + offset,
        to: range[1] + offset,
      };
      notes.push({ code: 'power/correction-out-of-range', facts });
    }
  };
  within('temperature', kelvin, form.temperature, zeroCelsius);
  within('dryPressure', dry, form.dryPressure);
  within('factor', factor, form.range);
  if ((engine.boostRatio ?? 1) > 1.05)
    notes.push({ code: 'power/correction-boosted', facts: { standard, factor } });
  return ok({ factor, dryPressure: dry, notes });
}

function airProblems(air: Air): readonly Problem[] {
  const bad = (field: 'pressure' | 'temperature' | 'relativeHumidity', value: number, good: boolean) =>
    good ? [] : [{ code: 'power/bad-air', facts: { field, value } } as const];
  return [
    ...bad('pressure', air.pressure, air.pressure >= 40_000 && air.pressure <= 115_000),
    ...bad('temperature', air.temperature, air.temperature >= 213.15 && air.temperature <= 343.15),
    ...bad('relativeHumidity', air.relativeHumidity, air.relativeHumidity >= 0 && air.relativeHumidity <= 1),
  ];
}

/** Where each factor comes from. */
export const explainCorrection: Record<Exclude<CorrectionStandard, 'none'>, FormulaCard> = {
  'SAE J1349': {
    formula: 'f = 1.18 (990 hPa / pd) sqrt((t + 273) / 298) - 0.18',
    inputs: [
      input('pd', 'hPa', 'dry pressure, absolute'),
      input('t', 'C', 'air temperature before the engine'),
    ],
    source: 'SAE J1349, form of June 1990, as quoted in public; limits from memory',
    validRange: '15 to 35 C, 90 to 105 kPa dry (absolute), factor 0.97 to 1.03',
  },
  'ISO 1585': {
    formula: 'f = (99 kPa / pd)^1.2 ((t + 273) / 298)^0.6',
    inputs: [
      input('pd', 'kPa', 'dry pressure, absolute'),
      input('t', 'C', 'air temperature before the engine'),
    ],
    source: 'ISO 1585 and UN Regulation 85, spark ignition, as quoted in public; limits from memory',
    validRange: '15 to 35 C, 90 to 110 kPa dry (absolute), factor 0.93 to 1.07',
  },
  'DIN 70020': {
    formula: 'f = (1013 hPa / p) sqrt((t + 273) / 293)',
    inputs: [input('p', 'hPa', 'barometer'), input('t', 'C', 'air temperature before the engine')],
    source: 'DIN 70020, from memory',
    validRange: 'not known to us',
  },
};
