import { describe, expect, it } from 'vitest';
import { powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { fromSi } from '../../../core/units/index.ts';
import { drive, errorAgainst } from '../../support/drive-generator.ts';

const d = drive({ seed: 4 });
/** Climbs by 50 rpm, the distance of two points, in less than 0.06 s. */
const quick = { gearRatio: 2.2, wheelPower: (w: number) => 330 * w };

describe('the ends of a pull', () => {
  it('a lift that got into the pull is left out and said', () => {
    const late = { ...d.pull, to: d.pull.to + 6, end_s: d.log.time[d.pull.to + 5] as number };
    const found = unwrap(powerOfPull(d.log, late, d.car, d.conditions));
    expect(found.notes.map((n) => n.code)).toContain('power/pull-trimmed');
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.02);
    const last = fromSi(found.engineSpeed_rad_s.at(-1) as number, 'rpm');
    expect(last).toBeGreaterThan(6300);
    expect(last).toBeLessThanOrEqual(6500);
  });

  it.each([
    [1, 1.02, 20],
    [2, 1.035, 20],
    [2, 1.06, 10],
  ])('%i rows at the end in which the clutch is open are no power', (open, ahead, rate) => {
    const one = drive({ seed: 4, rate, ...quick });
    const channels = one.log.channels.map((c) =>
      c.quantity === 'engineSpeed'
        ? { ...c, values: c.values.map((v, i) => (i >= one.pull.to - open ? ahead * v : v)) }
        : c,
    );
    const found = unwrap(powerOfPull({ ...one.log, channels }, one.pull, one.car, one.conditions));
    expect(fromSi(found.engineSpeed_rad_s.at(-1) as number, 'rpm')).toBeGreaterThan(6100);
    expect(fromSi(found.engineSpeed_rad_s.at(-1) as number, 'rpm')).toBeLessThan(6500);
    expect(errorAgainst(one.truth, found).rms).toBeLessThan(0.01);
  });

  it('a pull trimmed by hand is told only inside, with the samples around it at full throttle in use', () => {
    const cut = { ...d.pull, from: d.pull.from + 40, to: d.pull.to - 40 };
    const trimmed = unwrap(powerOfPull(d.log, cut, d.car, d.conditions));
    const whole = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    expect(trimmed.time[0] as number).toBeGreaterThanOrEqual(d.log.time[cut.from] as number);
    expect(trimmed.time.at(-1) as number).toBeLessThanOrEqual(d.log.time[cut.to - 1] as number);
    // With samples on both sides the ends are about as sure as the middle.
    const ends = trimmed.wheelPowerError[0] as number;
    const middle = trimmed.wheelPowerError[trimmed.wheelPowerError.length >> 1] as number;
    expect(ends).toBeLessThan(2 * middle);
    expect(whole.wheelPowerError.at(-1) as number).toBeGreaterThan(1.5 * middle);
  });

  it.each([
    [10, 0.25],
    [20, 0.15],
    [50, 0.15],
  ])('at %i a second the first %f s are left out: nothing stands before them', (rate, left_s) => {
    const one = drive({ seed: 4, rate, ...quick });
    const power = unwrap(powerOfPull(one.log, one.pull, one.car, one.conditions));
    const begins = (power.time[0] as number) - one.pull.start_s;
    expect(begins).toBeGreaterThanOrEqual(left_s - 0.005);
    expect(begins).toBeLessThan(left_s + 0.06);
    expect(one.pull.end_s - (power.time.at(-1) as number)).toBeLessThan(0.06);
  });

  it('of a pull trimmed by hand nothing is left out: samples at full throttle stand before it', () => {
    const one = drive({ seed: 4, ...quick });
    const from = one.pull.from + 10;
    const power = unwrap(powerOfPull(one.log, { ...one.pull, from }, one.car, one.conditions));
    expect((power.time[0] as number) - (one.log.time[from] as number)).toBeLessThan(0.06);
  });

  it('samples at part throttle around the pull change nothing', () => {
    const elsewhere = d.log.channels.map((c) =>
      c.quantity === 'pedal'
        ? c
        : { ...c, values: c.values.map((v, i) => (i < d.pull.from || i >= d.pull.to ? 5 : v)) },
    );
    const found = unwrap(powerOfPull({ ...d.log, channels: elsewhere }, d.pull, d.car, d.conditions));
    expect(found.wheelPower).toEqual(unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions)).wheelPower);
  });

  it('a spike near the end does not cut the pull', () => {
    const channels = d.log.channels.map((c) =>
      c.quantity === 'engineSpeed'
        ? { ...c, values: c.values.map((v, i) => (i === d.pull.to - 30 ? 2 * v : v)) }
        : c,
    );
    const found = unwrap(powerOfPull({ ...d.log, channels }, d.pull, d.car, d.conditions));
    expect(fromSi(found.engineSpeed_rad_s.at(-1) as number, 'rpm')).toBeGreaterThan(6300);
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });

  it.each([
    ['a pull of five samples', { to: d.pull.from + 5 }, 'power/pull-too-short'],
    ['a stretch of rolling', { from: d.pull.to + 2, to: d.pull.to + 18 }, 'power/pull-too-short'],
  ] as const)('%s is a problem, not a number', (_, change, code) => {
    const found = powerOfPull(d.log, { ...d.pull, ...change }, d.car, d.conditions);
    expect(found.ok).toBe(false);
    expect(!found.ok && found.problems[0].code).toBe(code);
  });
});
