import { describe, expect, it } from 'vitest';
import { gradeOfPull } from '../../../core/power/grade.ts';
import { ConditionsSchema, powerOfPull, wheelPowerHalf } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { channelFrom, drive, errorAgainst, interpolate, logOf } from '../../support/drive-generator.ts';
import { normal, seeded } from '../../support/random.ts';

const altitude = { noise: 0.15, step: 0.1 };

describe('slope', () => {
  it.each([0.02, -0.015])('of %f as entered is allowed for', (grade) => {
    const d = drive({ grade });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
    const level = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: 0 }));
    expect(errorAgainst(d.truth, level).mean * -Math.sign(grade)).toBeGreaterThan(0.03);
  });

  it('not entered is read from a logged altitude', () => {
    const d = drive({ grade: 0.02, altitude });
    const unknown = { ...d.conditions, grade_percent: null };
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, unknown));
    const note = found.notes.find((n) => n.code === 'power/grade-from-altitude');
    expect(note?.code === 'power/grade-from-altitude' && note.facts.grade).toBeCloseTo(0.02, 3);
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });

  it('downhill is read with its sign', () => {
    const d = drive({ grade: -0.03, altitude });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: null }));
    const note = found.notes.find((n) => n.code === 'power/grade-from-altitude');
    expect(note?.code === 'power/grade-from-altitude' && note.facts.grade).toBeCloseTo(-0.03, 3);
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });

  it('as entered is believed before the altitude, and then nothing is said of it', () => {
    const d = drive({ grade: 0.02, altitude });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: 0 }));
    const codes = found.notes.map((n) => n.code);
    expect(codes).not.toContain('power/grade-from-altitude');
    expect(codes).not.toContain('power/altitude-unclear');
    expect(errorAgainst(d.truth, found).mean).toBeLessThan(-0.03);
  });

  it('that the altitude does not clearly show is none', () => {
    const d = drive({ altitude: { noise: 2, step: 1 } });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: null }));
    const codes = found.notes.map((n) => n.code);
    expect(codes).toContain('power/altitude-unclear');
    expect(codes).toContain('power/level-assumed');
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });

  /** A satellite's height: whole metres, late, wandering by a metre within ten seconds. */
  function fromSatellites(grade: number, seed: number) {
    const d = drive({ grade, seed, altitude: { noise: 0, step: 0 } });
    const gauss = normal(seeded(900 + seed));
    const speed = d.log.channels.find((c) => c.quantity === 'vehicleSpeed')?.values ?? new Float64Array();
    let off = gauss();
    const log = {
      ...d.log,
      channels: d.log.channels.map((c) => {
        if (c.quantity !== 'altitude') return c;
        const values = c.values.map((_, i) => {
          // 20 rows a second, memory of ten seconds.
          off += gauss() * Math.sqrt(2 / 200) - off / 200;
          const late = c.values[Math.max(0, i - 20)] as number;
          const before = i < 20 ? ((20 - i) / 20) * (speed[0] as number) * grade : 0;
          return Math.round(late - before + off);
        });
        return { ...c, values };
      }),
    };
    return { ...d, log, conditions: { ...d.conditions, grade_percent: null } };
  }

  it.each([0, 0.02, -0.03, 0.05])(
    'of %f by a wandering height in steps of a metre, a second late, leaves a band that holds the truth',
    (grade) => {
      let held = 0;
      let points = 0;
      for (let seed = 1; seed <= 20; seed++) {
        const d = fromSatellites(grade, seed);
        // A car that is well known: what is left to err is the slope.
        const roadLoad = { a_N: 0.012 * 1420 * 9.80665, b_N_s_m: 0, c_N_s2_m2: 0.397, half_percent: 1 };
        const car = { ...d.car, massUncertainty_kg: 5, roadLoad };
        const found = unwrap(powerOfPull(d.log, d.pull, car, d.conditions));
        const half = wheelPowerHalf(found);
        for (const [i, w] of found.engineSpeed_rad_s.entries()) {
          const off =
            (found.wheelPower[i] as number) - interpolate(d.truth.engineSpeed, d.truth.wheelPower, w);
          if (Math.abs(off) <= (half[i] as number)) held++;
          points++;
        }
      }
      expect(held / points).toBeGreaterThanOrEqual(0.93);
    },
  );

  it('is told with how far it may be off, and the band of power holds that', () => {
    const d = drive({ grade: 0.05, altitude });
    const entered = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: null }));
    const note = found.notes.find((n) => n.code === 'power/grade-from-altitude');
    expect(note?.code === 'power/grade-from-altitude' && note.facts.error).toBeGreaterThan(0.003);
    found.systematicError.forEach((u, i) => {
      expect(u).toBeGreaterThan(1.2 * (entered.systematicError[i] as number));
    });
  });

  /** Up to speed and down again on one slope; the height rises by `wind` of the car's own wind besides. */
  function upAndDown(grade: number, wind: number, lag = 0) {
    const time = Float64Array.from({ length: 500 }, (_, i) => i / 20);
    const speed = time.map((t) => (t < 5 ? 15 : t < 13 ? 15 + 3 * (t - 5) : 39 - 1.5 * (t - 13)));
    const gauss = normal(seeded(4));
    const at: number[] = [0];
    for (let i = 1; i < 500; i++) at.push((at[i - 1] as number) + (speed[i - 1] as number) / 20);
    const height = speed.map((v, i) => {
      const late = i - 20 * lag;
      const where = late < 0 ? (late / 20) * 15 : (at[late] as number);
      return 100 + grade * where + (wind * v * v) / (2 * 9.80665) + 0.1 * gauss();
    });
    const log = logOf(time, [
      channelFrom('Speed', 'vehicleSpeed', 'm/s', speed),
      channelFrom('Height', 'altitude', 'm', height),
    ]);
    const window = { from: 100, to: 260, useFrom: 100, useTo: 260, trimmed: 0 };
    const [note] = gradeOfPull(log, window, ConditionsSchema.parse({ place: 'road' })).notes;
    return note?.code;
  }

  it.each([0, 0.02, 0.05])('of %f is not read from a height that goes with speed', (grade) => {
    expect(upAndDown(grade, 0.06)).toBe('power/altitude-with-speed');
  });

  it.each([0.02, -0.03, 0.05])('of %f is read from a height that is only late', (grade) => {
    expect(upAndDown(grade, 0)).toBe('power/grade-from-altitude');
    expect(upAndDown(grade, 0, 1)).toBe('power/grade-from-altitude');
  });

  /** The drive with its height changed, row by row. */
  function withHeight(grade: number, seed: number, change: (height: number, i: number, v: number) => number) {
    const d = drive({ grade, seed, altitude: { noise: 0.1, step: 0.1 } });
    const speed = d.log.channels.find((c) => c.quantity === 'vehicleSpeed')?.values ?? new Float64Array();
    const channels = d.log.channels.map((c) =>
      c.quantity === 'altitude'
        ? { ...c, values: c.values.map((x, i) => change(x, i, speed[i] as number)) }
        : c,
    );
    return { ...d, log: { ...d.log, channels }, conditions: { ...d.conditions, grade_percent: null } };
  }

  it('is not told by a height that stands still', () => {
    const d = withHeight(0.02, 1, () => 123);
    const codes = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions)).notes.map((n) => n.code);
    expect(codes).toContain('power/altitude-stands-still');
    expect(codes).toContain('power/level-assumed');
  });

  it('is not taken from a height whose unit nothing tells, and the band holds either unit', () => {
    // 1 foot is 0.3048 m, NIST SP 811: feet taken for metres show 3.28 times the slope.
    for (const grade of [-0.02, 0.02]) {
      const d = withHeight(grade, 2, (height) => height / 0.3048);
      const reason = {
        code: 'log/column-by-values',
        facts: { word: 'altitude', unit: 'm', low: 1, high: 9 },
      } as const;
      const channels = d.log.channels.map((c) => (c.quantity === 'altitude' ? { ...c, reason } : c));
      const found = unwrap(powerOfPull({ ...d.log, channels }, d.pull, d.car, d.conditions));
      expect(found.notes.map((n) => n.code)).toContain('power/altitude-unit-untold');
      expect(found.notes.map((n) => n.code)).not.toContain('power/grade-from-altitude');
      const half = wheelPowerHalf(found);
      for (const [i, w] of found.engineSpeed_rad_s.entries()) {
        const truth = interpolate(d.truth.engineSpeed, d.truth.wheelPower, w);
        expect(Math.abs((found.wheelPower[i] as number) - truth)).toBeLessThanOrEqual(half[i] as number);
      }
    }
  });
});
