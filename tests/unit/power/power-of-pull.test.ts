import { describe, expect, it } from 'vitest';
import { CarSchema, type PullPower, powerOfPull, unknownConditions } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { rpm } from '../../../core/units/index.ts';
import { boostedCurve, type Drive, type Driven, drive, errorAgainst } from '../../support/drive-generator.ts';

const powerOf = (d: Driven): PullPower => unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));

/** Root mean square over several pulls, each with its own noise. */
function rmsOf(given: Partial<Drive>, seeds = 4): number {
  let squares = 0;
  for (let seed = 1; seed <= seeds; seed++) {
    const d = drive({ ...given, seed });
    squares += errorAgainst(d.truth, powerOf(d)).rms ** 2;
  }
  return Math.sqrt(squares / seeds);
}

const usualCurves = {
  'boost at 2900 rpm': boostedCurve(290, 2900, 180, 5200),
  'early, soft boost': boostedCurve(250, 3000, 400, 5500),
  'no boost at all': (w: number) => 220 * w,
};

describe.each(Object.entries(usualCurves))('wheel power, %s', (_, wheelPower) => {
  it('is within 1.5 % RMS of the truth at 20 Hz with realistic noise', () => {
    expect(rmsOf({ wheelPower, slip: 0.02 })).toBeLessThan(0.015);
  });

  it('is within 3 % RMS at 10 Hz with speed in steps of 1 km/h and engine speed in steps of 25 rpm', () => {
    const coarse = {
      rate: 10,
      engineSpeed: { noise: rpm(5), step: rpm(25) },
      vehicleSpeed: { noise: 0.1 / 3.6, step: 1 / 3.6 },
    };
    expect(rmsOf({ wheelPower, slip: 0.02, ...coarse })).toBeLessThan(0.03);
  });
});

describe('what power rests on', () => {
  const d = drive({ slip: 0.02 });

  it('a car of which only the mass is known has a power, with each default said', () => {
    const car = CarSchema.parse({ mass_kg: 1420 });
    const found = unwrap(powerOfPull(d.log, d.pull, car, unknownConditions));
    const codes = found.notes.map((n) => n.code);
    for (const code of [
      'power/default-drag-area',
      'power/default-rolling',
      'power/default-air',
      'power/default-efficiency',
      'power/level-assumed',
      'power/wheel-inertia-not-counted',
      'power/engine-inertia-not-counted',
      'power/gearing-from-speed',
    ])
      expect(codes).toContain(code);
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.02);
  });

  it('engine speed rises strictly, in whole multiples of 50 rpm, and time with it', () => {
    const found = powerOf(d);
    for (let i = 0; i < found.time.length; i++) {
      const steps = (found.engineSpeed_rad_s[i] as number) / rpm(50);
      expect(steps).toBeCloseTo(Math.round(steps), 6);
      if (i > 0) expect(found.time[i] as number).toBeGreaterThan(found.time[i - 1] as number);
    }
    expect(found.time.length).toBeGreaterThan(60);
  });

  it('slip is read from the two speeds', () => {
    const note = powerOf(d).notes.find((n) => n.code === 'power/slip-from-speed');
    expect(note?.code === 'power/slip-from-speed' && note.facts.slip).toBeCloseTo(0.02, 2);
  });
});
