import { describe, expect, it } from 'vitest';
import { type CorrectionStandard, correctionFactor, dryPressure } from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import {
  type CheckValue,
  checkValue,
  checkValuesWhere,
  expectWithin,
} from '../../../support/check-values.ts';

/** Dry air, so that the barometer is the dry pressure. */
function factorInDryAir(standard: CorrectionStandard, pressure: number, celsius: number): number {
  return unwrap(correctionFactor(standard, { pressure, temperature: celsius + 273.15, relativeHumidity: 0 }))
    .factor;
}

const families = [
  ['SAE J1349', 'sae-', 'dry_pressure_hPa', 100],
  ['ISO 1585', 'iso-', 'dry_pressure_kPa', 1000],
  ['DIN 70020', 'din-', 'pressure_hPa', 100],
] as const;

describe.each(families)('%s', (standard, prefix, pressureKey, perUnit) => {
  const points = checkValuesWhere(
    (v) => v.topic === 'correction' && v.id.startsWith(prefix) && pressureKey in v.inputs,
    3,
  );
  it.each(points.map((p) => [p.id, p] as const))(
    '%s as computed from the published form',
    (id, point: CheckValue) => {
      expectWithin(
        factorInDryAir(
          standard,
          Number(point.inputs[pressureKey]) * perUnit,
          Number(point.inputs.temperature_C),
        ),
        { expected: Number(point.expected), tolerance: Number(point.tolerance), source: point.source, id },
      );
    },
  );
});

describe('the constants of the forms', () => {
  it('SAE J1349 is 1.18 times the ratio less 0.18 (form of June 1990, as quoted in public)', () => {
    const form = checkValue('sae-form').expected as Record<string, number>;
    const at = (pressure: number, celsius: number) => factorInDryAir('SAE J1349', pressure, celsius);
    // Half the reference pressure doubles the bracket; four times the temperature would double its root.
    const reference = (form.reference_dry_pressure_hPa as number) * 100;
    expect(at(reference, 25)).toBeCloseTo(1, 9);
    expect(at(reference / 2, 25) - at(reference, 25)).toBeCloseTo(form.gain as number, 9);
    expect(2 * at(reference, 25) - at(reference / 2, 25)).toBeCloseTo(form.offset as number, 9);
  });

  it('ISO 1585 has exponents 1.2 and 0.6 for spark ignition', () => {
    const form = checkValue('iso-form').expected as Record<string, number>;
    const at = (pressure: number, celsius: number) => factorInDryAir('ISO 1585', pressure, celsius);
    expect(Math.log(at(99_000 / 1.1, 25)) / Math.log(1.1)).toBeCloseTo(form.pressure_exponent as number, 9);
    expect(Math.log(at(99_000, 25 + 29.8)) / Math.log(1.1)).toBeCloseTo(
      form.temperature_exponent as number,
      9,
    );
  });

  it('DIN 70020 has the root of temperature and total pressure (from memory)', () => {
    const form = checkValue('din-form').expected as Record<string, number>;
    const reference = (form.reference_pressure_hPa as number) * 100;
    expect(factorInDryAir('DIN 70020', reference, 20)).toBeCloseTo(1, 9);
    expect(factorInDryAir('DIN 70020', reference / 2, 20)).toBeCloseTo(2, 9);
    expect(Math.log(factorInDryAir('DIN 70020', reference, 20 + 29.3)) / Math.log(1.1)).toBeCloseTo(
      form.temperature_exponent as number,
      9,
    );
  });
});

describe.each(['correction-humid-day', 'correction-cool-day'])('%s', (id) => {
  const day = checkValue(id);
  const expected = day.expected as Record<string, number>;
  const tolerance = day.tolerance as Record<string, number>;
  const air = {
    pressure: Number(day.inputs.barometer_kPa) * 1000,
    temperature: Number(day.inputs.temperature_C) + 273.15,
    relativeHumidity: Number(day.inputs.relative_humidity),
  };
  it('dry pressure', () => {
    expectWithin(dryPressure(air) / 1000, {
      expected: expected.dry_pressure_kPa as number,
      tolerance: tolerance.dry_pressure_kPa as number,
      source: day.source,
    });
  });
  it.each([
    ['sae', 'SAE J1349'],
    ['iso', 'ISO 1585'],
    ['din', 'DIN 70020'],
  ] as const)('%s', (key, standard) => {
    expectWithin(unwrap(correctionFactor(standard, air)).factor, {
      expected: expected[key] as number,
      tolerance: tolerance[key] as number,
      source: day.source,
    });
  });
});

describe('limits', () => {
  const codes = (standard: CorrectionStandard, celsius: number, pressure = 99_000, boostRatio = 1) =>
    unwrap(
      correctionFactor(
        standard,
        { pressure, temperature: celsius + 273.15, relativeHumidity: 0 },
        { boostRatio },
      ),
    ).notes.map((n) => n.code + ('what' in n.facts ? `:${n.facts.what}` : ''));

  it('ISO 1585 wants 15 to 35 C, dry pressure in its range and 0.93 to 1.07 (from memory, UN R85 annex 5)', () => {
    const limits = checkValue('iso-limits').expected as Record<string, [number, number]>;
    const [low, high] = limits.temperature_K as [number, number];
    expect(codes('ISO 1585', low - 273)).toEqual([]);
    expect(codes('ISO 1585', high - 273)).toEqual([]);
    expect(codes('ISO 1585', low - 273 - 0.1)).toEqual(['power/correction-out-of-range:temperature']);
    expect(codes('ISO 1585', high - 273 + 0.1)).toEqual(['power/correction-out-of-range:temperature']);
    const [thin] = limits.dry_pressure_kPa as [number, number];
    expect(codes('ISO 1585', 25, thin * 1000 - 10)).toContain('power/correction-out-of-range:dryPressure');
    const [, most] = limits.factor as [number, number];
    expect(codes('ISO 1585', 25, 99_000 / (most + 0.001) ** (1 / 1.2))).toContain(
      'power/correction-out-of-range:factor',
    );
  });

  it('SAE J1349 wants 15 to 35 C and 90 to 105 kPa dry (from memory)', () => {
    const limits = checkValue('sae-limits').expected as Record<string, [number, number]>;
    const [low, high] = limits.temperature_C as [number, number];
    for (const t of [low, high]) expect(codes('SAE J1349', t)).toEqual([]);
    expect(codes('SAE J1349', low - 0.2)).toEqual(['power/correction-out-of-range:temperature']);
    const [thin, dense] = limits.dry_pressure_kPa as [number, number];
    expect(codes('SAE J1349', 25, thin * 1000 - 10)).toContain('power/correction-out-of-range:dryPressure');
    expect(codes('SAE J1349', 25, dense * 1000 + 10)).toContain('power/correction-out-of-range:dryPressure');
  });

  it('a boosted engine is told what the standard says', () => {
    expect(codes('ISO 1585', 25, 99_000, 1.8)).toEqual(['power/correction-boosted']);
    expect(codes('SAE J1349', 25, 99_000, 1.04)).toEqual([]);
  });

  it('air that cannot be is a problem, not a number', () => {
    const air = { pressure: 99_000, temperature: 298.15, relativeHumidity: 0.4 };
    for (const bad of [
      { pressure: 990 },
      { temperature: 25 },
      { relativeHumidity: 40 },
      { pressure: Number.NaN },
    ])
      expect(correctionFactor('ISO 1585', { ...air, ...bad }).ok).toBe(false);
  });
});
