import { describe, expect, it } from 'vitest';
import { CarSchema, coastDownReport, findRolls, rollsIn } from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import { channelFrom, logOf } from '../../../support/drive-generator.ts';
import { normal, seeded } from '../../../support/random.ts';

/** Newton's second law in steps of a millisecond, F = a + b v + c v^2: the truth that intervals have to hold. */
const truth = { a: 170, b: 1.2, c: 0.4 };
const mass = 1450;
const car = CarSchema.parse({ mass_kg: mass, wheelInertia_kg_m2: 0 });
const forceAt = (v: number) => truth.a + truth.b * v + truth.c * v * v;

type Extra = { readonly rate?: number; readonly until?: number; readonly force?: (t: number) => number };

/** One roll from 36 m/s, speed with noise of 0.03 m/s, and what else holds the car back [N]. */
function rolled(seed: number, { rate = 10, until = 70, force = () => 0 }: Extra = {}) {
  const gauss = normal(seeded(seed));
  const time: number[] = [];
  const speed: number[] = [];
  let v = 36;
  for (let i = 0; i < until * 1000 && v > 1; i++) {
    if (i % (1000 / rate) === 0) {
      time.push(i / 1000);
      speed.push(v + 0.03 * gauss());
    }
    v -= ((forceAt(v) + force(i / 1000)) / mass) * 1e-3;
  }
  return { time: Float64Array.from(time), speed: Float64Array.from(speed) };
}

function logFrom({ time, speed }: ReturnType<typeof rolled>, engine?: (v: number) => number) {
  const channels = [channelFrom('Speed', 'vehicleSpeed', 'm/s', speed)];
  if (engine) channels.push(channelFrom('rpm', 'engineSpeed', 'rpm', speed.map(engine)));
  return logOf(time, channels);
}

const reportOf = (log: ReturnType<typeof logFrom>, windows = findRolls(log)) =>
  unwrap(coastDownReport(rollsIn(log, windows), car));
const codesOf = (log: ReturnType<typeof logFrom>, windows = findRolls(log)) =>
  reportOf(log, windows).notes.map((n) => n.code);

describe('what a roll in neutral is', () => {
  it('is found in a log with one row a second', () => {
    const log = logFrom(rolled(1, { rate: 1 }));
    const [found, ...more] = findRolls(log);
    expect(more).toEqual([]);
    expect((found?.to ?? 0) - (found?.from ?? 0)).toBeGreaterThan(60);
    const at = reportOf(log).force[1];
    expect(Math.abs((at?.force ?? 0) / forceAt(100 / 3.6) - 1)).toBeLessThan(0.03);
  });

  it('is not one in gear, also where the road turns the engine as slowly as it idles', () => {
    // 38 rad/s per 10 m/s: 36 m/s turn the engine at 1300 rpm.
    expect(findRolls(logFrom(rolled(2), (v) => 3.8 * v))).toEqual([]);
    expect(findRolls(logFrom(rolled(2), (v) => 88 + 0.6 * v))).toHaveLength(1);
  });

  it('is said where a person names a part that was driven in gear', () => {
    const windows = [{ from: 0, to: 600 }];
    expect(
      codesOf(
        logFrom(rolled(3), (v) => 7 * v),
        windows,
      ),
    ).toContain('power/coast-down-not-neutral');
    expect(
      codesOf(
        logFrom(rolled(3), () => 88),
        windows,
      ),
    ).not.toContain('power/coast-down-not-neutral');
  });

  it('ends before the brake', () => {
    for (const seed of [4, 5, 6, 7]) {
      const log = logFrom(rolled(seed, { until: 45, force: (t) => (t > 40 ? 2 * mass : 0) }));
      const [found] = findRolls(log);
      expect(log.time[(found?.to ?? 0) - 1]).toBeLessThanOrEqual(40.1);
    }
  });
});

describe('the interval of a coast-down', () => {
  it('holds the force of rolls one way on roads that are called level', () => {
    const slopes = normal(seeded(11));
    const roads = 60;
    let inside = 0;
    for (let n = 0; n < roads; n++) {
      // 0.3 % is the standard deviation of a road called level (common practice, practice.ts).
      const slope = 0.003 * slopes() * mass * 9.80665;
      const at = reportOf(logFrom(rolled(100 + n, { force: () => slope }))).force[1];
      if (at && Math.abs(at.force - forceAt(at.speed)) <= at.half) inside++;
    }
    expect(inside / roads).toBeGreaterThan(0.88);
  });

  it('comes with the seconds in which a brake was dragged, and without any where none was', () => {
    for (const seed of [21, 22, 23, 24, 25]) {
      const dragged = reportOf(
        logFrom(rolled(seed, { force: (t) => (t > 15 && t < 19 ? 0.15 * mass : 0) })),
      ).notes.find((n) => n.code === 'power/coast-down-held-back');
      expect(dragged?.facts).toMatchObject({
        from_s: expect.closeTo(15, -0.5),
        to_s: expect.closeTo(19, -0.5),
      });
      expect(codesOf(logFrom(rolled(seed)))).not.toContain('power/coast-down-held-back');
    }
  });
});
