import { describe, expect, it } from 'vitest';
import { type PullPower, powerOfPull, twoWayDisagreement } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { drive, errorAgainst, usualDrive } from '../../support/drive-generator.ts';
import { normal, seeded } from '../../support/random.ts';

const distance = usualDrive.radius / (usualDrive.gearRatio * usualDrive.finalDrive);

/** Powers worked out as on the level, of pulls on a slope. */
function asLevel(grade: number, seeds: readonly number[]): PullPower[] {
  return seeds.map((seed) => {
    const d = drive({ grade, seed });
    return unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: 0 }));
  });
}

describe('pulls both ways', () => {
  const car = drive().car;

  it('tell a slope of 1 % and give the power of the level road', () => {
    const found = unwrap(
      twoWayDisagreement({ out: asLevel(0.01, [1, 2]), back: asLevel(-0.01, [3, 4]) }, car, distance),
    );
    expect(Math.abs(found.grade - 0.01)).toBeLessThan(0.0005);
    expect(found.isClear).toBe(true);
    expect(found.difference).toBeLessThan(0);
    expect(found.headwind).toBeGreaterThan(0);
    expect(errorAgainst(drive().truth, found).rms).toBeLessThan(0.015);
    expect(found.notes.map((n) => n.code)).toEqual(['power/two-way-slope']);
  });

  it('downhill out has the other sign', () => {
    const found = unwrap(
      twoWayDisagreement({ out: asLevel(-0.02, [1]), back: asLevel(0.02, [3]) }, car, distance),
    );
    expect(Math.abs(found.grade + 0.02)).toBeLessThan(0.001);
    expect(found.difference).toBeGreaterThan(0);
  });

  it('a level road shows a clear slope in no more than the 5 % of days that a 95 % interval allows', () => {
    const gauss = normal(seeded(7));
    const flat = asLevel(0, [1])[0] as PullPower;
    // Pulls differ by 0.5 % of power from each other, as good ones on one day do (common practice).
    const pull = () => {
      const luck = 1 + 0.005 * gauss();
      return { ...flat, wheelPower: flat.wheelPower.map((p) => p * luck) };
    };
    let clear = 0;
    for (let day = 0; day < 400; day++) {
      const pulls = { out: [pull(), pull(), pull()], back: [pull(), pull()] };
      if (unwrap(twoWayDisagreement(pulls, car, distance)).isClear) clear++;
    }
    expect(clear / 400).toBeLessThan(0.08);
    expect(clear / 400).toBeGreaterThan(0.02);
  });

  it('1 % of slope on 1300 kg at 120 km/h is 4 kW', () => {
    const flat = asLevel(0, [1])[0] as PullPower;
    const w = 120 / 3.6 / distance;
    const one = { ...flat, engineSpeed_rad_s: Float64Array.of(w - 1, w, w + 1) };
    const shift = (kW: number) => ({
      ...one,
      wheelPower: Float64Array.of(100e3 + kW * 1e3, 100e3 + kW * 1e3, 100e3 + kW * 1e3),
    });
    const found = unwrap(
      twoWayDisagreement({ out: [shift(-4.25)], back: [shift(4.25)] }, { ...car, mass_kg: 1300 }, distance),
    );
    expect(found.grade).toBeCloseTo(0.01, 4);
  });

  it('needs pulls in both directions and a common band', () => {
    const one = asLevel(0, [1]);
    expect(twoWayDisagreement({ out: one, back: [] }, car, distance)).toMatchObject({
      ok: false,
      problems: [{ code: 'power/no-two-way', facts: { out: 1, back: 0 } }],
    });
    const elsewhere = one.map((p) => ({ ...p, engineSpeed_rad_s: p.engineSpeed_rad_s.map((w) => w + 5000) }));
    expect(twoWayDisagreement({ out: one, back: elsewhere }, car, distance)).toMatchObject({
      ok: false,
      problems: [{ code: 'power/no-common-band' }],
    });
  });
});
