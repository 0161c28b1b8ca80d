import { describe, it } from 'vitest';
import { humidityRatio, moistAirDensity, saturationPressure } from '../../../../core/power/index.ts';
import { checkValue, checkValuesWhere, expectWithin } from '../../../support/check-values.ts';

const kelvin = (celsius: unknown) => Number(celsius) + 273.15;

describe('saturation pressure against the ASHRAE table', () => {
  const points = checkValuesWhere((v) => v.id.startsWith('ashrae-pws-'), 6);
  it.each(points.map((p) => [p.id, p] as const))('%s', (id, p) => {
    expectWithin(saturationPressure(kelvin(p.inputs.temperature_C)), {
      expected: Number(p.expected),
      tolerance: Number(p.tolerance),
      source: p.source,
      id,
    });
  });
});

describe('humidity ratio of saturated air against the ASHRAE table', () => {
  const points = checkValuesWhere(
    (v) => v.id.startsWith('ashrae-ws-') || /^humidity-(0|20|25|30)$/.test(v.id),
    9,
  );
  it.each(points.map((p) => [p.id, p] as const))('%s', (id, p) => {
    const air = { pressure: 101_325, temperature: kelvin(p.inputs.temperature_C), relativeHumidity: 1 };
    expectWithin(humidityRatio(air) * 1000, {
      expected: Number(p.expected),
      tolerance: Number(p.tolerance),
      source: p.source,
      id,
    });
  });
});

describe('air of 25 C and 50 %', () => {
  it('has the density and humidity ratio that psychrolib computes', () => {
    const p = checkValue('air-25C-50rh');
    const expected = p.expected as Record<string, number>;
    const tolerance = p.tolerance as Record<string, number>;
    const air = { pressure: 101_325, temperature: 298.15, relativeHumidity: 0.5 };
    expectWithin(moistAirDensity(air), {
      expected: expected.density_kg_m3 as number,
      tolerance: tolerance.density_kg_m3 as number,
      source: p.source,
    });
    expectWithin(humidityRatio(air) * 1000, {
      expected: expected.humidity_ratio_g_kg as number,
      tolerance: tolerance.humidity_ratio_g_kg as number,
      source: p.source,
    });
    expectWithin(0.5 * saturationPressure(298.15), {
      expected: expected.vapour_pressure_Pa as number,
      tolerance: tolerance.vapour_pressure_Pa as number,
      source: p.source,
    });
  });

  it('dry air at 20 C and 98.21 kPa has the reference density of the coast-down procedure', () => {
    const p = checkValue('coastdown-reference-density');
    expectWithin(moistAirDensity({ pressure: 98_210, temperature: 293.15, relativeHumidity: 0 }), {
      expected: Number(p.expected),
      tolerance: Number(p.tolerance),
      source: p.source,
    });
  });
});
