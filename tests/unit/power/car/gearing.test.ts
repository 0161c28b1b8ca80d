import { describe, expect, it } from 'vitest';
import { nearestGear } from '../../../../core/log/index.ts';
import { CarSchema, distancePerRadian, powerOfPull } from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import { drive, errorAgainst, usualDrive } from '../../../support/drive-generator.ts';

const car = CarSchema.parse({
  mass_kg: 1420,
  gearRatios: [3.3, 2.0, 1.36, 1.03],
  finalDrive: 3.9,
  rollingRadius_m: 0.308,
});

describe('gearing', () => {
  it('third gear moves the car 0.0581 m per radian of the crank', () => {
    expect(unwrap(distancePerRadian(car, 3)).distance).toBeCloseTo(0.308 / (1.36 * 3.9), 9);
    expect(unwrap(distancePerRadian(car, 2)).distance).toBeCloseTo(0.308 / (2.0 * 3.9), 9);
  });

  it.each([
    // Radius of the generator's car with its third gear and final drive told, and the other way round.
    [{ rollingRadius_m: null }, { radius: usualDrive.radius, overallRatio: null }],
    [{ gearRatios: [] }, { radius: null, overallRatio: usualDrive.gearRatio * usualDrive.finalDrive }],
    [
      { gearRatios: [], rollingRadius_m: null },
      { radius: null, overallRatio: null },
    ],
  ])('a log with both speeds tells what %j leaves open', (untold, expected) => {
    const d = drive({ slip: 0.025 });
    const found = unwrap(
      powerOfPull(d.log, { ...d.pull, gear: null }, { ...d.car, ...untold }, d.conditions),
    );
    const facts = found.notes.find((n) => n.code === 'power/gearing-from-speed')?.facts;
    for (const name of ['radius', 'overallRatio'] as const) {
      const told = facts?.[name];
      if (expected[name] === null) expect(told).toBeNull();
      else expect((told ?? 0) / expected[name]).toBeCloseTo(1, 2);
    }
  });

  it('a distance between two gears is neither', () => {
    const gearAt = (distance: number) => nearestGear([3.3, 2.0, 1.36, 1.03], 3.9, 0.308 / distance);
    expect(gearAt(0.0581 * 1.17)).toBeNull();
    expect(gearAt(0.0581)).toBe(3);
    expect(gearAt(0.0767)).toBe(4);
    expect(nearestGear([3.3, 2.0, 1.36], 3.9, 5.4)).toBe(3);
    expect(nearestGear([3.3, 2.0, 1.36], 3.9, 6.5)).toBeNull();
  });

  it.each([
    ['gearRatios', { gearRatios: [] as number[] }],
    ['finalDrive', { finalDrive: null }],
    ['radius', { rollingRadius_m: null }],
    ['gear', { pullGear: null }],
  ])('engine speed alone without %s says what is missing', (missing, without) => {
    const d = drive({ vehicleSpeed: null });
    const found = powerOfPull(d.log, { ...d.pull, gear: null }, { ...d.car, ...without }, d.conditions);
    expect(found).toMatchObject({ ok: false, problems: [{ code: 'power/no-gearing', facts: { missing } }] });
  });

  it('a tyre size stands in for the rolling radius', () => {
    const d = drive({ vehicleSpeed: null });
    // 225/45 R17 rolls on 0.3076 m, the generator's car on 0.308.
    const asTyre = { ...d.car, rollingRadius_m: null, tyre: '225/45 R17' };
    const found = unwrap(powerOfPull(d.log, d.pull, asTyre, d.conditions));
    expect(found.notes.map((n) => n.code)).toContain('power/radius-from-tyre');
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.02);
  });
});
