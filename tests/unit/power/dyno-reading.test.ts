import { describe, expect, it } from 'vitest';
import type { QuantityId } from '../../../core/log/index.ts';
import { CarSchema, ConditionsSchema, powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { rpm } from '../../../core/units/index.ts';
import { channelFrom, drive, logOf, pullOf } from '../../support/drive-generator.ts';

const torqueAt = (w: number) => 240 + 60 * Math.sin((w - rpm(2500)) / rpm(1300));
const dyno = ConditionsSchema.parse({ place: 'dyno' });
const car = CarSchema.parse({
  mass_kg: 1400,
  gearRatios: [3.3, 2.0, 1.36],
  finalDrive: 3.9,
  rollingRadius_m: 0.31,
  tyreSlip: 0,
  pullGear: 3,
  drivetrainEfficiency: 0.88,
});
const time = Float64Array.from({ length: 200 }, (_, i) => i / 20);
const speed = time.map((t) => rpm(2500 + 400 * t));
const road = speed.map((w) => (w * 0.31) / (1.36 * 3.9));
const pull = pullOf(time, 0, 200, 2500, 6480);
const real = speed.map((w) => torqueAt(w) * w);
const engine = channelFrom('rpm', 'engineSpeed', 'rpm', speed);
const column = (quantity: QuantityId, unit: string, values: Float64Array) =>
  channelFrom(`${quantity} column`, quantity, unit, values);

/** Power found over power as it was, the worst of the pull. */
function worst(found: { engineSpeed_rad_s: Float64Array; enginePower: Float64Array }): number {
  return Math.max(
    ...found.enginePower.map((p, i) => {
      const w = found.engineSpeed_rad_s[i] as number;
      return Math.abs(p / (torqueAt(w) * w) - 1);
    }),
  );
}

describe('a column of power that tells nothing', () => {
  const broken = [
    ['no-number', time.map(() => Number.NaN)],
    ['zeros', time.map(() => 0)],
    ['below-zero', real.map((p) => -p)],
    ['one-number', time.map(() => 120e3)],
    ['too-much', real.map((p) => 1000 * p)],
  ] as const;

  it.each(broken)('gives way to torque, and says why: %s', (why, values) => {
    const log = logOf(time, [
      engine,
      column('enginePower', 'kW', values),
      column('engineTorque', 'Nm', speed.map(torqueAt)),
    ]);
    const found = unwrap(powerOfPull(log, pull, car, dyno));
    expect(found.basis).toBe('torque-channel');
    expect(worst(found)).toBeLessThan(0.01);
    expect(found.notes).toContainEqual({
      code: 'power/reading-left-aside',
      facts: { column: 'enginePower column', why, instead: 'channel' },
    });
  });

  it.each(broken)('is the reason why a dyno tells no power: %s', (why, values) => {
    const log = logOf(time, [engine, column('wheelPower', 'kW', values)]);
    expect(powerOfPull(log, pull, car, dyno)).toEqual({
      ok: false,
      problems: [{ code: 'power/dyno-reading-unusable', facts: { column: 'wheelPower column', why } }],
    });
  });

  it.each(broken)('leaves the power to acceleration on a road, and says so: %s', (why, given) => {
    const d = drive();
    const values = d.log.time.map((_, i) => given[i % given.length] as number);
    const log = { ...d.log, channels: [...d.log.channels, column('wheelPower', 'kW', values)] };
    const plain = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    for (const place of [null, 'road'] as const) {
      const found = unwrap(powerOfPull(log, d.pull, d.car, { ...d.conditions, place }));
      expect(found.wheelPower).toEqual(plain.wheelPower);
      expect(found.notes).toContainEqual({
        code: 'power/reading-left-aside',
        facts: { column: 'wheelPower column', why, instead: 'road' },
      });
    }
  });

  it('is named beside what acceleration lacks, where neither tells power', () => {
    const log = logOf(time, [
      engine,
      column(
        'enginePower',
        'kW',
        time.map(() => Number.NaN),
      ),
    ]);
    const bare = CarSchema.parse({ mass_kg: 1400 });
    const found = powerOfPull(log, pull, bare, ConditionsSchema.parse({}));
    expect(found.ok ? [] : found.problems.map((p) => p.code)).toEqual([
      'power/no-gearing',
      'power/dyno-reading-unusable',
    ]);
  });
});

describe('a dyno log', () => {
  it('may be below zero on the overrun', () => {
    const values = real.map((p, i) => (i >= 180 ? -20e3 : p));
    const log = logOf(time, [engine, column('enginePower', 'kW', values)]);
    const found = unwrap(powerOfPull(log, pullOf(time, 0, 175, 2500, 5980), car, dyno));
    expect(worst(found)).toBeLessThan(0.01);
  });

  it.each([
    ['engineTorque', speed.map(torqueAt)],
    ['enginePower', real],
  ] as const)(
    'without engine speed turns %s by road speed and gear, never by acceleration',
    (what, values) => {
      const log = logOf(time, [
        channelFrom('speed', 'vehicleSpeed', 'm/s', road),
        column(what, what === 'enginePower' ? 'kW' : 'Nm', values),
      ]);
      const found = unwrap(powerOfPull(log, pull, car, dyno));
      expect(found.basis).toBe(what === 'enginePower' ? 'power-channel' : 'torque-channel');
      expect(worst(found)).toBeLessThan(0.01);
      expect(found.notes.map((n) => n.code)).toContain('power/dyno-speed-by-gear');
      const fixed = unwrap(powerOfPull({ ...log, channels: [...log.channels, engine] }, pull, car, dyno));
      expect(found.systematicError[40]).toBeGreaterThan(fixed.systematicError[40] as number);
      expect(powerOfPull(log, pull, { ...car, gearRatios: [] }, dyno)).toMatchObject({
        problems: [{ code: 'power/no-engine-speed', facts: { missing: 'gearRatios' } }],
      });
    },
  );

  it('tells power only where its column does', () => {
    const values = real.map((p, i) => (i < 60 ? Number.NaN : p));
    const log = logOf(time, [engine, column('enginePower', 'kW', values)]);
    const found = unwrap(powerOfPull(log, pull, car, dyno));
    expect(found.engineSpeed_rad_s[0]).toBeGreaterThan(rpm(2500 + 400 * 2.9));
    expect(worst(found)).toBeLessThan(0.01);
  });

  it.each([
    [0.88, 'engine-speed'],
    [0.88 * 1.36 * 3.9, 'axle'],
  ] as const)('says how it took torque at the wheel: %f of the crank as %s', (times, at) => {
    const values = speed.map((w) => torqueAt(w) * times);
    const log = logOf(time, [engine, column('wheelTorque', 'Nm', values)]);
    const found = unwrap(powerOfPull(log, pull, car, dyno));
    expect(worst(found)).toBeLessThan(0.01);
    const said = found.notes.find((n) => n.code === 'power/wheel-torque-read');
    expect(said?.facts).toMatchObject({ column: 'wheelTorque column', at });
    expect(said?.facts.ratio).toBeCloseTo(1.36 * 3.9, 9);
  });
});
