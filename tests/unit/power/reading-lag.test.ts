import { describe, expect, it } from 'vitest';
import { CarSchema, ConditionsSchema, powerOfPull, wheelPowerHalf } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { rpm } from '../../../core/units/index.ts';
import { channelFrom, logOf, pullOf } from '../../support/drive-generator.ts';

const dyno = ConditionsSchema.parse({ place: 'dyno' });
const car = CarSchema.parse({ mass_kg: 1400, drivetrainEfficiency: 0.88 });
const torqueAt = (w: number) => 200 + 60 * Math.sin((w - rpm(2500)) / rpm(1300));

/** 600 rpm per second from 2500 to 6100 rpm, then the lift; power by a filter of so many seconds, 20 rows a second. */
function ramp(filter: number, afterLift: 'falls' | 'is held' = 'falls') {
  const step = 1e-3;
  const rows: [number, number, number][] = [];
  let speed = rpm(2500);
  let shown = torqueAt(speed) * speed;
  for (let i = 0; i < 8000; i++) {
    const isPull = i < 6000;
    const power = isPull || (afterLift === 'is held' && i < 7000) ? torqueAt(speed) * speed : -5000;
    shown += filter > 0 ? ((power - shown) * step) / filter : power - shown;
    if (i % 50 === 0) rows.push([i * step, speed, shown]);
    if (isPull) speed += rpm(600) * step;
    else if (afterLift === 'falls' || i >= 7000) speed -= rpm(700) * step;
  }
  const time = Float64Array.from(rows, ([t]) => t);
  const log = logOf(time, [
    channelFrom(
      'rpm',
      'engineSpeed',
      'rpm',
      Float64Array.from(rows, ([, w]) => w),
    ),
    channelFrom(
      'Power',
      'wheelPower',
      'kW',
      Float64Array.from(rows, ([, , p]) => p),
    ),
  ]);
  return unwrap(powerOfPull(log, pullOf(time, 0, 121, 2500, 6100), car, dyno));
}

const late = (found: ReturnType<typeof ramp>) => found.notes.find((n) => n.code === 'power/reading-late');
const held = (found: ReturnType<typeof ramp>) => {
  const half = wheelPowerHalf(found);
  const { engineSpeed_rad_s, wheelPower } = found;
  const off = [...engineSpeed_rad_s].map((w, i) => Math.abs((wheelPower[i] as number) - torqueAt(w) * w));
  return off.filter((x, i) => x <= (half[i] as number)).length / off.length;
};

describe('a dyno reading', () => {
  // A first-order filter falls to a half in 0.693 of its time: 0.21 s and 0.35 s.
  it.each([0.3, 0.5])(
    'behind a filter of %f s is told to be late, and its band holds the truth',
    (filter) => {
      const found = ramp(filter);
      expect(late(found)?.facts).toMatchObject({
        column: 'Power',
        lag: expect.closeTo(Math.LN2 * filter, 1),
      });
      expect(held(found)).toBeGreaterThan(0.95);
    },
  );

  it('that falls with the lift is on time', () => {
    expect(late(ramp(0))).toBeUndefined();
    expect(held(ramp(0))).toBe(1);
  });

  it('is not late where the dyno holds the speed at the top under full throttle', () => {
    expect(late(ramp(0, 'is held'))).toBeUndefined();
  });
});
