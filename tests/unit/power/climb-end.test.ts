import { describe, expect, it } from 'vitest';
import { climbEnd } from '../../../core/power/climb-end.ts';
import { powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { fromSi } from '../../../core/units/index.ts';
import { drive, errorAgainst } from '../../support/drive-generator.ts';
import { normal, seeded } from '../../support/random.ts';

/** Five seconds that end with `last` rows of a course of their own. */
function climb(rate: number, slope: number, noise: number, held_s: number, bounce: number) {
  const gauss = normal(seeded(7));
  const n = 5 * rate;
  const time = Float64Array.from({ length: n }, (_, i) => i / rate);
  const knee = (n - 1) / rate - held_s;
  const speed = time.map((t, i) => {
    const cut = t > knee ? (i % 2 === 0 ? -bounce : 0) : 0;
    return 2000 + slope * Math.min(t, knee) - 0.02 * slope * Math.min(t, knee) ** 2 + cut + noise * gauss();
  });
  return { time, speed, n, knee };
}

describe('the end of a climb', () => {
  it('500 rpm/s up to 6,400 rpm, level for the last 0.3 s, ends before the level', () => {
    const time = Float64Array.from({ length: 100 }, (_, i) => i / 20);
    const knee = 4.65;
    const speed = time.map((t) => 6400 - 500 * Math.max(0, knee - t));
    const end = climbEnd(time, speed);
    expect(time[end - 1] as number).toBeCloseTo(4.6, 6);
  });

  it.each([
    [20, 500, 5, 0.25, 40],
    [20, 300, 5, 0.3, 40],
    [10, 600, 10, 0.4, 50],
    [50, 900, 8, 0.15, 60],
  ])(
    'at %i rows a second and %i rpm/s with noise of %i rpm a limiter of %f s is seen',
    (rate, slope, noise, held_s, bounce) => {
      const c = climb(rate, slope, noise, held_s, bounce);
      const end = climbEnd(c.time, c.speed);
      expect(c.time[end - 1] as number).toBeLessThanOrEqual(c.knee + 1 / rate);
      expect(c.time[end - 1] as number).toBeGreaterThan(c.knee - 0.3);
    },
  );

  it.each([
    [20, 500, 5],
    [20, 200, 8],
    [10, 300, 10],
    [50, 900, 8],
  ])(
    'at %i rows a second and %i rpm/s with noise of %i rpm a climb that goes on is left whole',
    (rate, slope, noise) => {
      const c = climb(rate, slope, noise, 0, 0);
      expect(climbEnd(c.time, c.speed)).toBe(c.n);
    },
  );

  it('a pull that ends on the limiter has its power up to there, as true as any other', () => {
    const d = drive({ seed: 4 });
    const held = d.pull.to - 5;
    const channels = d.log.channels.map((c) =>
      c.quantity === 'engineSpeed'
        ? {
            ...c,
            values: c.values.map((v, i) =>
              i >= held && i < d.pull.to ? (c.values[held] as number) - (i % 2 === 0 ? 6 : 1) : v,
            ),
          }
        : c,
    );
    const found = unwrap(powerOfPull({ ...d.log, channels }, d.pull, d.car, d.conditions));
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
    expect(found.time.at(-1) as number).toBeLessThan(d.log.time[held] as number);
    expect(fromSi(found.engineSpeed_rad_s.at(-1) as number, 'rpm')).toBeGreaterThan(6100);
    expect(found.notes.map((n) => n.code)).toContain('power/pull-trimmed');
  });
});
