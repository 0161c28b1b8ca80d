import { describe, expect, it } from 'vitest';
import { median } from '../../../core/log/index.ts';
import { powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { rpm } from '../../../core/units/index.ts';
import { drive, errorAgainst, heldShare } from '../../support/drive-generator.ts';
import { coarse, fine, manyCars } from '../../support/many-cars.ts';

// Second gear, boost that comes in over 80 to 250 rpm, often while the pull begins. Limits are the aims of the
// project; a car in thirty may lie beyond, as the README says.
describe.each([
  ['20 a second, steps of 1 rpm and 0.1 km/h', 0.015, 0.96, { rate: 20 }, fine],
  ['10 a second, steps of 25 rpm and 1 km/h', 0.03, 0.92, { rate: 10 }, coarse],
] as const)('pulls with a steep onset, %s', (_, most, heldAtLeast, rate, sensors) => {
  const found = manyCars({
    count: 60,
    seed: 51,
    sensors: (between) => ({ ...rate, ...sensors(between) }),
    isHard: true,
  }).map((d) => {
    const power = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    return { ...errorAgainst(d.truth, power), held: heldShare(d.truth, power) };
  });

  it('are near the truth in 29 cars of 30', () => {
    expect(found.filter((f) => f.rms > most).length).toBeLessThanOrEqual(2);
  });

  it('hold the truth within 1.96 standard errors at nearly all of their points', () => {
    const points = found.reduce((sum, f) => sum + f.points, 0);
    const held = found.reduce((sum, f) => sum + f.held * f.points, 0) / points;
    expect(held).toBeGreaterThan(heldAtLeast);
  });
});

// Torque that comes in brings slip with it: engine speed climbs straight while the car's speed bends.
it.each([1, 1.3])(
  'a pull that begins at high engine speed as torque comes in is told as well with slip as without, ratio %f',
  (gearRatio) => {
    const from = rpm(4900);
    const usualError = (slips: readonly number[]) =>
      median(
        Float64Array.from({ length: 24 }, (_, i) => {
          const one = drive({
            seed: i + 1,
            gearRatio,
            slip: slips[i % slips.length] as number,
            rpmFrom: 4900,
            rpmTo: 6500,
            engineSpeed: { noise: rpm(6), step: rpm(1) },
            vehicleSpeed: { noise: 0.15 / 3.6, step: 0.1 / 3.6 },
            wheelPower: (w) => 200e3 * (1 - 0.5 * Math.exp((from - w) / rpm(120))),
          });
          return errorAgainst(one.truth, unwrap(powerOfPull(one.log, one.pull, one.car, one.conditions))).rms;
        }),
      );
    expect(usualError([0.02, 0.03])).toBeLessThan(usualError([0]));
  },
);
