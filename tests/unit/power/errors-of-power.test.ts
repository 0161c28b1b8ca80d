import { describe, expect, it } from 'vitest';
import { CarSchema, explainPower, powerOfPull, unknownConditions } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { drive, interpolate } from '../../support/drive-generator.ts';

describe('errors of power', () => {
  it('the standard error is the scatter that pulls of one truth show', () => {
    // A curve without features, so that all scatter is noise.
    const at = 4500;
    const w = (at * Math.PI) / 30;
    const found = Array.from({ length: 16 }, (_, i) => {
      const d = drive({ wheelPower: (x) => 220 * x, seed: 100 + i });
      return unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    });
    const powers = found.map((p) => interpolate(p.engineSpeed_rad_s, p.wheelPower, w));
    const errors = found.map((p) => interpolate(p.engineSpeed_rad_s, p.wheelPowerError, w));
    const mean = powers.reduce((a, b) => a + b, 0) / powers.length;
    const scatter = Math.sqrt(powers.reduce((a, b) => a + (b - mean) ** 2, 0) / (powers.length - 1));
    const typical = errors.reduce((a, b) => a + b, 0) / errors.length;
    // Sixteen pulls tell a scatter to 18 %; the choice of bandwidth adds some.
    expect(scatter / typical).toBeGreaterThan(0.6);
    expect(scatter / typical).toBeLessThan(1.8);
  });

  it('the systematic error grows as the car is known less well', () => {
    const d = drive();
    const at = (change: object) => {
      const found = unwrap(powerOfPull(d.log, d.pull, { ...d.car, ...change }, d.conditions));
      return (found.systematicError[40] as number) / (found.wheelPower[40] as number);
    };
    const known = at({ massUncertainty_kg: 10 });
    expect(known).toBeLessThan(0.02);
    expect(at({ massUncertainty_kg: 100 })).toBeGreaterThan(1.5 * known);
    expect(at({ massUncertainty_kg: 10, wheelInertia_kg_m2: null })).toBeGreaterThan(known);
    expect(at({ massUncertainty_kg: 10, dragArea_m2: null })).toBeGreaterThan(known);
    const bare = unwrap(powerOfPull(d.log, d.pull, CarSchema.parse({ mass_kg: 1420 }), unknownConditions));
    expect((bare.systematicError[40] as number) / (bare.wheelPower[40] as number)).toBeGreaterThan(0.03);
  });

  it('a mass off by its uncertainty moves power by what the error says', () => {
    const d = drive();
    const heavy = { ...d.car, mass_kg: d.car.mass_kg * 1.02 };
    const base = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    const moved = unwrap(powerOfPull(d.log, d.pull, heavy, d.conditions));
    const share = (moved.wheelPower[40] as number) / (base.wheelPower[40] as number) - 1;
    expect(share).toBeGreaterThan(0.014);
    expect(share).toBeLessThanOrEqual(0.02);
    expect(share).toBeLessThan(
      (base.systematicError[40] as number) / (base.wheelPower[40] as number) + 0.004,
    );
  });

  it('each number has its formula, inputs, source and range', () => {
    const all = Object.values(explainPower);
    expect(all.length).toBe(16);
    for (const e of all) {
      for (const text of [e.formula, e.source, e.validRange]) expect(text.length).toBeGreaterThan(3);
      expect(e.inputs.length).toBeGreaterThan(0);
    }
  });
});
