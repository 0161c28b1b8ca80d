import { describe, expect, it } from 'vitest';
import { wheelMass } from '../../../core/power/car/wheel-mass.ts';
import {
  CarSchema,
  ConditionsSchema,
  coastDownTime,
  coefficientsFromPounds,
  fitCoastDown,
  loadAt,
  practice,
  roadLoad,
  rollsIn,
} from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { toSi } from '../../../core/units/index.ts';
import { checkValue, checkValuesWhere, expectWithin } from '../../support/check-values.ts';
import { channelFrom, logOf } from '../../support/drive-generator.ts';

const mph = 0.44704;

describe('published road-load coefficients (US EPA, Test Car List Data Files)', () => {
  const records = checkValuesWhere((v) => v.id.startsWith('epa-roadload-'), 4);
  it.each(records.map((r) => [r.id, r] as const))('%s in SI', (id, r) => {
    const expected = r.expected as Record<string, number>;
    const tolerance = r.tolerance as Record<string, number>;
    const found = coefficientsFromPounds(
      Number(r.inputs.A_lbf),
      Number(r.inputs.B_lbf_per_mph),
      Number(r.inputs.C_lbf_per_mph2),
    );
    const check = (key: string, actual: number) =>
      expectWithin(actual, {
        expected: expected[key] as number,
        tolerance: tolerance[key] as number,
        source: r.source,
        id,
      });
    check('A_N', found.a);
    check('B_N_per_m_s', found.b);
    check('C_N_per_m_s2', found.c);
    const v = 50 * mph;
    const car = CarSchema.parse({
      mass_kg: toSi(Number(r.inputs.equivalent_test_weight_lb), 'lb'),
      roadLoad: { a_N: found.a, b_N_s_m: found.b, c_N_s2_m2: found.c },
    });
    const load = roadLoad(car, ConditionsSchema.parse({}), 0);
    check('test_mass_kg', car.mass_kg);
    check('force_at_50mph_N', loadAt(load, v));
    check('power_at_50mph_kW', (loadAt(load, v) * v) / 1000);
  });

  it('dynamometer power at 50 mph from a worked figure', () => {
    const r = checkValue('epa-dyno-horsepower');
    const c = coefficientsFromPounds(
      Number(r.inputs.A_lbf),
      Number(r.inputs.B_lbf_per_mph),
      Number(r.inputs.C_lbf_per_mph2),
    );
    const v = 50 * mph;
    expectWithin(((c.a + c.b * v + c.c * v * v) * v) / toSi(1, 'hp'), {
      expected: Number(r.expected),
      tolerance: Number(r.tolerance),
      source: r.source,
    });
  });
});

describe.each(['coastdown-1', 'coastdown-2'])('%s', (id) => {
  const r = checkValue(id);
  const expected = r.expected as Record<string, number>;
  const tolerance = r.tolerance as Record<string, number>;
  const load = {
    a: Number(r.inputs.A_N),
    b: Number(r.inputs.B_N_per_m_s),
    c: Number(r.inputs.C_N_per_m_s2),
  };
  const mass = Number(r.inputs.effective_mass_kg);

  it.each([
    ['75_to_15_mph_s', 75, 15],
    ['55_to_45_mph_s', 55, 45],
  ] as const)('%s', (key, from, to) => {
    expectWithin(coastDownTime(load, mass, from * mph, to * mph), {
      expected: expected[key] as number,
      tolerance: tolerance[key] as number,
      source: r.source,
      id,
    });
  });

  it('fitting the speeds back returns the coefficients', () => {
    // Speed at even instants by inverting the time integral, which shares nothing with the fit's integrator.
    const time: number[] = [];
    const speed: number[] = [];
    let v = 75 * mph;
    const seconds = expected['75_to_15_mph_s'] as number;
    for (let t = 0; t < seconds; t += 0.5) {
      time.push(t);
      speed.push(v);
      v = speedAfter(load, mass, v, 0.5);
    }
    const log = logOf(Float64Array.from(time), [
      channelFrom('Speed', 'vehicleSpeed', 'm/s', Float64Array.from(speed)),
    ]);
    const car = CarSchema.parse({ mass_kg: mass, wheelInertia_kg_m2: 0 });
    const found = unwrap(fitCoastDown(rollsIn(log, [{ from: 0, to: time.length }]), car));
    expect(found.a / load.a).toBeCloseTo(1, 3);
    expect(found.b - load.b).toBeCloseTo(0, 2);
    expect(found.c / load.c).toBeCloseTo(1, 3);
  });
});

describe('inertia and power', () => {
  it("wheels are worth EPA's 1.5 % of the mass per axle where they are not known", () => {
    const r = checkValue('epa-inertia');
    const expected = r.expected as Record<string, number>;
    expect(practice.wheelInertiaShare).toBeCloseTo((2 * (expected.per_axle_percent as number)) / 100, 9);
    const m = toSi(Number(r.inputs.equivalent_test_weight_lb), 'lb');
    const tolerance = r.tolerance as Record<string, number>;
    // Static and dynamic mass lie half of it below and above the test weight.
    const check = (key: string, actual: number) =>
      expectWithin(actual, {
        expected: expected[key] as number,
        tolerance: tolerance[key] as number,
        source: r.source,
      });
    check('etw_kg', m);
    check('static_kg', m * (1 - practice.wheelInertiaShare / 2));
    check('dynamic_kg', m * (1 + practice.wheelInertiaShare / 2));
  });

  it('wheel power from acceleration', () => {
    const r = checkValue('acceleration-power');
    const i = r.inputs as Record<string, number>;
    const radius = 0.3;
    const car = CarSchema.parse({
      mass_kg: i.mass_kg,
      rollingRadius_m: radius,
      wheelInertia_kg_m2: ((i.rotating_factor as number) - 1) * (i.mass_kg as number) * radius ** 2,
      rollingCoefficient: i.rolling,
      dragArea_m2: i.drag_area_m2,
    });
    // Dry air of 20 C at the pressure that gives the stated density.
    const barometer = ((i.air_density as number) * 287.042 * 293.15) / 1000;
    const conditions = ConditionsSchema.parse({
      ambient_C: 20,
      barometer_kPa: barometer,
      relativeHumidity_percent: 0,
    });
    const mass = car.mass_kg + wheelMass(car).mass;
    const v = i.speed_m_s as number;
    const power = (mass * (i.acceleration as number) + loadAt(roadLoad(car, conditions, 0), v)) * v;
    expectWithin(power / 1000, {
      expected: Number(r.expected),
      tolerance: Number(r.tolerance),
      source: r.source,
    });
  });

  it('the defaults lie where typical cars do (common practice)', () => {
    const typical = checkValue('roadload-typical').expected as Record<string, [number, number]>;
    const within = (value: number, low: number, high: number) => {
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    };
    const [cdLow, cdHigh] = typical.drag_coefficient as [number, number];
    const [areaLow, areaHigh] = typical.frontal_area_m2 as [number, number];
    within(practice.rollingCoefficient, ...(typical.rolling as [number, number]));
    within(practice.dragArea, cdLow * areaLow, cdHigh * areaHigh);
  });
});

/** Speed after dt by Newton's method on the time integral. */
function speedAfter(load: { a: number; b: number; c: number }, mass: number, v: number, dt: number): number {
  const force = (x: number) => load.a + x * (load.b + x * load.c);
  let next = v - (force(v) / mass) * dt;
  for (let i = 0; i < 4; i++) next += ((coastDownTime(load, mass, v, next) - dt) * force(next)) / mass;
  return next;
}
