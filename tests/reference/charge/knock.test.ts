import { describe, expect, it } from 'vitest';
import { ignitionDelay, knockIntegral } from '../../../core/charge/index.ts';
import { checkValue, checkValuesWhere, expectWithin } from '../../support/check-values.ts';
import { e244, e244Limit } from '../../support/e244.ts';
import { expectKnownDeviation } from '../../support/known-deviation.ts';
import { inputNumber, itAgrees } from '../../support/published.ts';

const atm = 101325;
const degree = Math.PI / 180;

describe('ignition delay', () => {
  for (const { id } of checkValuesWhere((v) => /^douaud-eyzat-\d/.test(v.id), 7))
    itAgrees(
      id,
      (v) =>
        1e3 *
        ignitionDelay(
          inputNumber(v, 'octane'),
          atm * inputNumber(v, 'pressure_atm'),
          inputNumber(v, 'temperature_K'),
        ),
    );
});

describe('knock integral', () => {
  it('reaches 1 after exactly the delay where the state stands still (definition)', () => {
    const v = checkValue('livengood-wu-constant');
    const delay = ignitionDelay(
      inputNumber(v, 'octane'),
      atm * inputNumber(v, 'pressure_atm'),
      inputNumber(v, 'temperature_K'),
    );
    expectWithin(delay * 1e3, {
      id: v.id,
      expected: Number(v.expected),
      tolerance: Number(v.tolerance),
      source: v.source,
    });
  });

  itAgrees('livengood-wu-ramp', (v) => {
    // Integrated here: the product integrates over crank angle, so this holds the delay along a changing state.
    let [sum, t] = [0, 0];
    const step = 1e-6;
    while (sum < 1) {
      const middle = t + step / 2;
      const rate =
        1 / ignitionDelay(inputNumber(v, 'octane'), atm * (20 + 2000 * middle), 700 + 25000 * middle);
      const last = Math.min(step, (1 - sum) / rate);
      sum = last < step ? 1 : sum + step * rate;
      t += last;
    }
    return t * 1e3;
  });

  for (const { id } of checkValuesWhere((v) => v.id.startsWith('livengood-wu-compression-'), 4))
    itAgrees(id, (v) =>
      knockIntegral({
        crank: {
          compressionRatio: inputNumber(v, 'compression_ratio'),
          rodToCrank: inputNumber(v, 'rod_to_crank'),
        },
        closing_rad: inputNumber(v, 'from_deg') * degree,
        pressure: atm * inputNumber(v, 'inlet_atm'),
        temperature: inputNumber(v, 'inlet_K'),
        engineSpeed_rad_s: (inputNumber(v, 'rpm') * Math.PI) / 30,
        octane: inputNumber(v, 'octane'),
        spark_rad: null,
        burnDuration_rad: 60 * degree,
        heat: 0,
        exponent: inputNumber(v, 'polytropic_exponent'),
      }),
    );

  it('knows the form of the correlation as published', () => {
    const form = checkValue('douaud-eyzat-form').expected as Record<string, number>;
    const at = (on: number, p: number, t: number) => 1e3 * ignitionDelay(on, p * atm, t);
    expect(at(100, 1, 1e12)).toBeCloseTo(form.factor as number, 6);
    expect(Math.log(at(90, 1, 800) / at(100, 1, 800)) / Math.log(0.9)).toBeCloseTo(
      form.octane_exponent as number,
      9,
    );
    expect(Math.log(at(90, 20, 800) / at(90, 1, 800)) / Math.log(20)).toBeCloseTo(
      form.pressure_exponent as number,
      9,
    );
    expect(Math.log(at(90, 20, 800) / at(90, 20, 1600)) * 1600).toBeCloseTo(form.activation_K as number, 6);
  });
});

describe('water injection on a supercharged engine, NACA E-244, relative to its own dry limit', () => {
  const gainOf = (id: string) => {
    const v = checkValue(id);
    const point = checkValue(id.replace('gain-', ''));
    const [dry, wet] = (point.expected as { manifold_inHg_abs: [number, number] }).manifold_inHg_abs;
    const of = { air_F: inputNumber(v, 'carburettor_air_F'), fuelAir: inputNumber(v, 'fuel_air_ratio') };
    const shown = { ...of, waterFuel: 0, manifold_inHg: dry };
    const ours = e244Limit(shown, { ...of, waterFuel: 0.6 }) / dry - 1;
    return { v, published: wet / dry - 1, ours };
  };

  it('starts from assumptions stated beforehand, none of them fitted', () => {
    expect(e244).toMatchObject({ rise: 110, pressureRatio: 2.2, evaporatedInCylinder: 0.5, warming: 40 });
  });

  // ±25 % of the published gain in manifold pressure is the aim that the model is held to.
  it('naca-e244-gain-0.08-101: gain within 25 %', () => {
    const { published, ours, v } = gainOf('naca-e244-gain-0.08-101');
    console.log(`gain ${ours.toFixed(3)} against ${published.toFixed(3)} (${v.source})`);
    expect(Math.abs(ours / published - 1)).toBeLessThanOrEqual(0.25);
  });

  const tooLittle =
    'drops take little part before the valve in the warm charge, and the cooling in the cylinder is a guess';
  const noMixtureTerm =
    'the delay has no term for mixture strength: a rich charge is knock-free by itself and gains less from water';
  it.each([
    ['naca-e244-gain-0.08-158', 0.25, tooLittle],
    ['naca-e244-gain-0.095-158', 0.21, noMixtureTerm],
    ['naca-e244-gain-0.095-101', 0.34, noMixtureTerm],
  ])('%s: gain further off than 25 %%, known', (id, deviation, because) => {
    const { published, ours, v } = gainOf(id);
    console.log(`${id}: gain ${ours.toFixed(3)} against ${published.toFixed(3)}`);
    expectKnownDeviation(
      ours,
      { expected: published, tolerance: 0.25 * published, source: v.source },
      { deviation, because },
    );
  });

  it('cooler carburettor air, dry: less gain than measured, known', () => {
    const v = checkValue('naca-e244-air-temperature');
    const published = (v.expected as Record<string, number>)['fuel_air_0.08'] as number;
    const shown = { air_F: 158, fuelAir: 0.08, waterFuel: 0, manifold_inHg: 36.5 };
    const ours = e244Limit(shown, { air_F: 101, fuelAir: 0.08, waterFuel: 0 }) / 36.5;
    console.log(`${v.id}: ratio ${ours.toFixed(3)} against ${published}`);
    expectKnownDeviation(
      ours - 1,
      { expected: published - 1, tolerance: 0.25 * (published - 1), source: v.source },
      {
        deviation: 0.08,
        because:
          'the temperature term of the correlation (3800 K) gives half of what was measured at these end-gas temperatures',
      },
    );
  });

  it('a richer mixture, dry: hardly any gain where a quarter was measured, known', () => {
    const v = checkValue('naca-e244-enrichment');
    const published = (v.expected as [number, number])[0];
    const shown = { air_F: 158, fuelAir: 0.08, waterFuel: 0, manifold_inHg: 36.5 };
    const ours = e244Limit(shown, { air_F: 158, fuelAir: 0.095, waterFuel: 0 }) / 36.5;
    console.log(`${v.id}: ratio ${ours.toFixed(3)} against ${published}`);
    expectKnownDeviation(
      ours - 1,
      { expected: published - 1, tolerance: 0.25 * (published - 1), source: v.source },
      {
        deviation: 0.255,
        because: 'the delay has no term for mixture strength: headroom never counts enrichment',
      },
    );
  });
});
