import { describe, expect, it } from 'vitest';
import { CarSchema, ConditionsSchema, powerOfPull, wheelPowerHalf } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { rpm } from '../../../core/units/index.ts';
import { channelFrom, logOf, pullOf } from '../../support/drive-generator.ts';
import { normal, seeded } from '../../support/random.ts';

const dyno = ConditionsSchema.parse({ place: 'dyno' });
const car = CarSchema.parse({ mass_kg: 1400 });

/** 250 N m at the crank, 400 rpm per second; the dyno reads `off` times that. */
function ramp(off: number, quantity: 'enginePower' | 'wheelPower' = 'enginePower') {
  const time = Float64Array.from({ length: 200 }, (_, i) => i / 20);
  const speed = time.map((t) => rpm(2500 + 400 * t));
  const log = logOf(time, [
    channelFrom('rpm', 'engineSpeed', 'rpm', speed),
    channelFrom(
      'Power',
      quantity,
      'kW',
      speed.map((w) => 250 * w * off),
    ),
  ]);
  return { log, pull: pullOf(time, 0, 200, 2500, 6480) };
}

describe('wheel power from a reading at the engine', () => {
  it('holds in its band what is not known of the drivetrain', () => {
    const gauss = normal(seeded(31));
    const cars = 200;
    let inside = 0;
    for (let n = 0; n < cars; n++) {
      // 2 % of a dyno against another, 0.82 to 0.92 of a drivetrain at 95 %: common practice (practice.ts).
      const efficiency = 0.87 * (1 + 0.03 * gauss());
      const { log, pull } = ramp(1 + 0.02 * gauss());
      const found = unwrap(powerOfPull(log, pull, car, dyno));
      const truth = 250 * (found.engineSpeed_rad_s[40] as number) * efficiency;
      const off = Math.abs((found.wheelPower[40] as number) - truth);
      if (off <= (wheelPowerHalf(found)[40] as number)) inside++;
    }
    expect(inside / cars).toBeGreaterThan(0.92);
    expect(inside / cars).toBeLessThan(0.985);
  });

  it('is said to be, and a reading at the wheels is not', () => {
    const codes = (quantity: 'enginePower' | 'wheelPower') => {
      const { log, pull } = ramp(1, quantity);
      return unwrap(powerOfPull(log, pull, car, dyno)).notes.map((n) => n.code);
    };
    expect(codes('enginePower')).toContain('power/engine-reading');
    expect(codes('wheelPower')).not.toContain('power/engine-reading');
  });

  it('says where nothing in the file tells the unit', () => {
    const { log, pull } = ramp(1, 'wheelPower');
    const reason = {
      code: 'log/column-by-values',
      facts: { word: 'power', unit: 'kW', low: 1, high: 9 },
    } as const;
    const channels = log.channels.map((c) => (c.quantity === 'wheelPower' ? { ...c, reason } : c));
    const notes = unwrap(powerOfPull({ ...log, channels }, pull, car, dyno)).notes;
    expect(notes.find((n) => n.code === 'power/reading-unit-assumed')?.facts).toEqual({
      column: 'Power',
      unit: 'kW',
      is: 'power',
    });
  });
});
