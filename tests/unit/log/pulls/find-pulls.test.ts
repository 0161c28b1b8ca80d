import { describe, expect, it } from 'vitest';
import { findPulls, type Log, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import {
  type LoggerTraits,
  logDrive,
  plainText,
  randomTraits,
} from '../../../support/log-generator/logger.ts';
import { createRandom } from '../../../support/log-generator/random.ts';
import { dynoScenario, roadScenario } from '../../../support/log-generator/scenario.ts';
import { scorePulls } from '../../../support/log-generator/score.ts';

type Sum = { hits: number; missed: number; extra: number; misses: string[] };

/** Drives of so many seeds, logged with what `has` leaves, scored against the truth. */
function scoreDrives(
  seeds: number,
  tolerance: number,
  has: Partial<LoggerTraits['has']>,
  hardestPart: number,
): Sum {
  const sum: Sum = { hits: 0, missed: 0, extra: 0, misses: [] };
  for (let seed = 1; seed <= seeds; seed++) {
    const random = createRandom(seed);
    const scenario = random.chance(0.15) ? dynoScenario(random) : roadScenario(random, hardestPart);
    const traits = randomTraits(random);
    const table = logDrive(scenario.drive, { ...traits, has: { ...traits.has, ...has } }, random);
    const log = unwrap(readLog(new TextEncoder().encode(plainText(table)), { file: 'drive.csv' }));
    const found = findPulls(log).pulls.map((p) => ({ start: p.start_s, end: p.end_s }));
    const score = scorePulls(found, table.pulls, tolerance);
    sum.hits += score.hits;
    sum.missed += score.missed;
    sum.extra += score.extra;
    sum.misses.push(...score.misses.map((m) => `${seed}: ${m}`));
  }
  return sum;
}

function expectScore(sum: Sum, least: number): void {
  const { hits, missed, extra, misses } = sum;
  expect(hits + missed).toBeGreaterThan(60);
  expect(hits / (hits + missed), misses.join('\n')).toBeGreaterThanOrEqual(least);
  expect(hits / (hits + extra), misses.join('\n')).toBeGreaterThanOrEqual(least);
}

describe('pulls of invented drives', () => {
  it('are found by pedal or throttle, both ends within 0.15 s', () => {
    expectScore(scoreDrives(50, 0.15, {}, 0.75), 0.99);
  });

  it('are found by manifold pressure where no pedal is logged, both ends within 0.15 s', () => {
    // How far the air lags behind the foot is the car's own: starts are placed for the middle of several sorts of cars,
    // and these drives' air is among the quickest, their feet among the slowest.
    expectScore(scoreDrives(40, 0.15, { pedal: false, throttle: false, boost: true }, 0.45), 0.93);
  });

  it('are found by acceleration alone where nothing else is logged, both ends within 0.3 s', () => {
    // Coarser by nature: engine speed does not show the last of a slow foot's travel.
    expectScore(scoreDrives(40, 0.3, { pedal: false, throttle: false, boost: false }, 0.45), 0.9);
  });
});

describe('a pedal that a logger renews five times a second', () => {
  it('shows the foot late by half a renewal, which is taken off both ends and said', () => {
    // The foot goes down from 3.00 to 3.10 s and up from 11.00 s on; rows come 50 times a second.
    const foot = (t: number) => {
      if (t < 3) return 15 + 4 * Math.sin(3 * t);
      return t < 3.1 ? 15 + 850 * (t - 3) : t < 11 ? 100 : Math.max(0, 100 - 700 * (t - 11));
    };
    const rows = Array.from({ length: 750 }, (_, i) => {
      const t = i / 50;
      const rpm = t < 3 ? 2500 : t < 11 ? 2500 + 450 * (t - 3) : 6100 - 250 * (t - 11);
      return [
        t.toFixed(2),
        rpm.toFixed(0),
        (rpm * 0.022).toFixed(2),
        foot(Math.floor(t * 5 + 1e-9) / 5).toFixed(1),
      ];
    });
    const text = `Time (s),RPM (rpm),Speed (km/h),Pedal (%)\n${rows.map((r) => r.join(',')).join('\n')}\n`;
    const [pull] = findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'held.csv' }))).pulls;
    expect(Math.abs((pull?.start_s ?? 0) - 3.1)).toBeLessThan(0.15);
    expect(Math.abs((pull?.end_s ?? 0) - 11)).toBeLessThan(0.15);
  });
});

/** A log of one pull in third gear at 20 Hz, with what `change` makes of its columns. */
function onePull(change: (row: Record<string, number>, t: number) => Record<string, number>): Log {
  const rows = Array.from({ length: 300 }, (_, i) => {
    const t = i / 20;
    const isPull = t >= 3 && t < 11;
    const rpm = t < 3 ? 2500 : isPull ? 2500 + 450 * (t - 3) : 6100 - 250 * (t - 11);
    return change(
      {
        time: t,
        rpm,
        speed: rpm * 0.022,
        pedal: isPull ? 100 : t < 3 ? 15 : 0,
        throttle: isPull ? 99 : 12,
        retard: 0,
        gear: 3,
      },
      t,
    );
  });
  const body = rows
    .map((r) => [r.time, r.rpm, r.speed, r.pedal, r.throttle, r.retard, r.gear].join(','))
    .join('\n');
  const head =
    'Time (s),Engine Speed (rpm),Vehicle Speed (km/h),Pedal (%),Throttle (%),Knock Retard (deg),Gear';
  return unwrap(readLog(new TextEncoder().encode(`${head}\n${body}\n`), { file: 'one.csv' }));
}

describe('a pull', () => {
  const flagsOf = (log: Log) => findPulls(log).pulls.map((p) => p.flags.map((f) => f.code));

  it('has its ends, its gear and its engine speeds', () => {
    const { pulls, warnings } = findPulls(onePull((r) => r));
    expect(warnings).toEqual([]);
    expect(pulls).toHaveLength(1);
    expect(pulls[0]).toMatchObject({ start_s: 3, end_s: 10.95, gear: 3, complete: true, flags: [] });
    expect(pulls[0]?.rpmFrom).toBeCloseTo(2500, 6);
    expect(pulls[0]?.rpmTo).toBeCloseTo(6077.5, 6);
  });

  it('has its gear from the ratios where none is logged', () => {
    const log = onePull((r) => ({ ...r, gear: 0 }));
    // 0.022 km/h per rpm: 0.31 m over 1.3 times 4.08.
    const car = { gearRatios: [3.2, 1.9, 1.3, 0.95], finalDrive: 4.08, rollingRadius_m: 0.31 };
    expect(findPulls(log, car).pulls[0]?.gear).toBe(3);
    expect(findPulls(log, { pullGear: 4 }).pulls[0]?.gear).toBe(4);
    expect(findPulls(log).pulls[0]?.gear).toBeNull();
  });

  it('with knock retard is flagged, with its size', () => {
    const log = onePull((r, t) => ({ ...r, retard: t > 7 && t < 7.3 ? 2.5 : 0 }));
    const flag = findPulls(log).pulls[0]?.flags[0];
    expect(flag?.code).toBe('log/pull-knock');
    expect(flag?.facts).toMatchObject({ retard_rad: (2.5 * Math.PI) / 180 });
  });

  it('whose throttle shut under a floored pedal is flagged', () => {
    expect(
      flagsOf(onePull((r, t) => ({ ...r, throttle: t > 7 && t < 7.6 ? 40 : (r.throttle ?? 0) }))),
    ).toEqual([['log/pull-intervention']]);
  });

  it('whose throttle shuts at the highest engine speed of the log was on the limiter', () => {
    // The plate is held where it carries the car, and engine speed creeps on a little.
    const held = (rpm: number, t: number) => Math.min(rpm, 5500 + 12 * Math.max(0, t - 9.7));
    const log = onePull((r, t) => ({
      ...r,
      rpm: held(r.rpm ?? 0, t),
      throttle: t > 9.7 && t < 11 ? 30 : (r.throttle ?? 0),
    }));
    expect(flagsOf(log)).toEqual([['log/pull-limiter']]);
  });

  it('whose throttle shuts for the rest of a pull below what the engine reached elsewhere was taken back', () => {
    const log = onePull((r, t) => {
      if (t > 9.7 && t < 11) return { ...r, rpm: Math.min(r.rpm ?? 0, 5300), throttle: 30 };
      return t > 1 && t < 1.5 ? { ...r, rpm: 6400 } : r;
    });
    expect(flagsOf(log)[0]).toContain('log/pull-intervention');
  });

  it('whose wheels spin is flagged and stays one', () => {
    expect(flagsOf(onePull((r, t) => ({ ...r, rpm: (r.rpm ?? 0) * (t > 5 && t < 5.6 ? 1.1 : 1) })))).toEqual([
      ['log/pull-wheel-spin'],
    ]);
  });

  it('that runs into the limiter is flagged', () => {
    expect(flagsOf(onePull((r) => ({ ...r, rpm: Math.min(5500, r.rpm ?? 0) })))).toEqual([
      ['log/pull-limiter'],
    ]);
  });

  it.each([
    ['a tight', 60],
    ['a coarse', 230],
  ])('that bounces off %s limiter is flagged', (_, depth) => {
    const bounced = (rpm: number, t: number) => Math.min(rpm, 5100 - depth * Math.abs(Math.sin(16 * t)));
    expect(
      flagsOf(onePull((r, t) => ({ ...r, rpm: t > 3 && t < 11 ? bounced(r.rpm ?? 0, t) : (r.rpm ?? 0) }))),
    ).toEqual([['log/pull-limiter']]);
  });

  it('whose wheels spin for half a second and grip again is not taken for one on the limiter', () => {
    const slip = (t: number) => (t > 6 && t < 6.6 ? 1 + 0.12 * Math.sin(((t - 6) / 0.6) * Math.PI) : 1);
    expect(flagsOf(onePull((r, t) => ({ ...r, rpm: (r.rpm ?? 0) * slip(t) })))).toEqual([
      ['log/pull-wheel-spin'],
    ]);
  });

  it('that changes gear under full throttle is two', () => {
    const log = onePull((r, t) => {
      const shifted = t >= 7 && t < 11;
      return { ...r, gear: shifted ? 4 : 3, rpm: shifted ? (r.rpm ?? 0) * 0.75 : (r.rpm ?? 0) };
    });
    const { pulls } = findPulls(log);
    expect(pulls.map((p) => p.gear)).toEqual([3, 4]);
    expect(pulls[0]?.end_s).toBeCloseTo(6.95, 6);
    expect(pulls[1]?.start_s).toBeCloseTo(7, 6);
    expect(pulls.every((p) => p.flags.some((f) => f.code === 'log/pull-gear-change'))).toBe(true);
  });

  it('lifted half way is kept but not complete', () => {
    const lifted = onePull((r, t) => ({ ...r, pedal: t > 5 ? 0 : (r.pedal ?? 0) }));
    expect(findPulls(lifted).pulls).toMatchObject([
      { complete: false, flags: [{ code: 'log/pull-aborted' }] },
    ]);
  });

  it('is none where the pedal moves but never gets to its stop', () => {
    expect(
      findPulls(onePull((r) => ({ ...r, pedal: (r.pedal ?? 0) * 0.5, throttle: (r.throttle ?? 0) * 0.5 }))),
    ).toEqual({
      pulls: [],
      warnings: [{ code: 'log/no-pulls', facts: {} }],
    });
  });

  it('is found by a throttle that reads 82 wide open, whatever its sweep at rest reads', () => {
    const log = onePull((r, t) => ({
      ...r,
      pedal: Number.NaN,
      throttle: t > 0.5 && t < 0.8 ? 100 : 0.82 * (r.throttle ?? 0),
    }));
    expect(findPulls(log).pulls).toMatchObject([{ start_s: 3, end_s: 10.95 }]);
  });

  it('on a dyno whose rollers the log does not see has no spin and no gear change', () => {
    const log = onePull((r) => ({ ...r, speed: 50, gear: 0 }));
    expect(findPulls(log).pulls).toMatchObject([{ start_s: 3, gear: null, flags: [] }]);
  });

  it('is none in neutral', () => {
    const log = onePull((r, t) => ({
      ...r,
      speed: 0,
      rpm: t < 3 ? 900 : Math.min(6500, 900 + 7000 * (t - 3)),
      pedal: t > 3 && t < 4 ? 100 : 0,
    }));
    expect(findPulls(log).pulls).toEqual([]);
  });
});

it('a pedal sample that fell out does not part a pull; a foot that was lifted does', () => {
  const cut = (from: number, to: number) =>
    onePull((row, t) => ({ ...row, pedal: t > from && t < to ? 0 : (row.pedal ?? 0) }));
  expect(findPulls(cut(6.99, 7.01)).pulls.map((p) => [p.start_s, p.end_s])).toEqual([[3, 10.95]]);
  expect(findPulls(cut(6.99, 7.31)).pulls).toHaveLength(2);
});

it.each([
  ['at its start', 3.05],
  ['in its midst', 7],
  ['at its end', 10.85],
])('one reading of 65535 or of nothing %s does not lose a pull', (_, at) => {
  for (const rpm of [65_535, 0]) {
    const log = onePull((row, t) => ({ ...row, rpm: Math.abs(t - at) < 0.01 ? rpm : (row.rpm ?? 0) }));
    expect(findPulls(log).pulls).toMatchObject([{ start_s: 3, end_s: 10.95, complete: true, flags: [] }]);
  }
});
