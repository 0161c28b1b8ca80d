import { describe, expect, it } from 'vitest';
import { CarSchema, ConditionsSchema, roadLoad } from '../../../core/power/index.ts';
import { systematicError } from '../../../core/power/systematic-error.ts';

const conditions = ConditionsSchema.parse({
  place: 'road',
  ambient_C: 20,
  barometer_kPa: 101.325,
  relativeHumidity_percent: 0,
  grade_percent: 0,
});
/** Half of the 95 % interval of the mass: 15 kg of standard uncertainty, 1 % of it. */
const usual = { mass_kg: 1500, massUncertainty_kg: 29.4, wheelInertia_kg_m2: 0 };
const [v, a] = [30, 2];

const errorOf = (given: object) => {
  const car = CarSchema.parse({ ...usual, ...given });
  return systematicError(car, roadLoad(car, conditions, 0, 0), 0, car.mass_kg, v, a);
};

describe('what all pulls of a car err by together', () => {
  it('holds a coast-down that was worked out with the same mass, in air of another day', () => {
    // By hand, JCGM 100:2008 equation 10: F = 150 N + 360 N of drag at 30 m/s.
    // Mass 1 % of (3000 + 510) N, force 1 % of 510 N, air 4 % of 360 N (practice.ts), each times 30 m/s.
    const roadLoad = { a_N: 150, b_N_s_m: 0, c_N_s2_m2: 0.4, half_percent: 1.96 };
    expect(errorOf({ roadLoad })).toBeCloseTo(Math.hypot(1053, 153, 432), 1);
  });

  it('holds rolling resistance with the mass that presses on the tyres', () => {
    // Crr 0.01 of 14,710 N is 147.1 N: mass 1 % of (3000 + 147.1) N, rolling 15 % of 147.1 N, each times 30 m/s.
    // Drag of 0.6 m^2 in 1.2041 kg/m^3 is 325.1 N, 5 % of it by area and 0.5 % by air.
    const byDrag = 325.1 * 30 * Math.hypot(0.05, 0.005);
    expect(errorOf({ dragArea_m2: 0.6, rollingCoefficient: 0.01 })).toBeCloseTo(
      Math.hypot(944.1, 662, byDrag),
      -0.5,
    );
  });
});
