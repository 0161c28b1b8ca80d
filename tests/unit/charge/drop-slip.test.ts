import { describe, expect, it } from 'vitest';
import { airViscosity, stirringOnTheWay } from '../../../core/charge/index.ts';

const drop = { liquidDensity: 950, pressure: 200e3, temperature: 330 };
const at = (change: Partial<Parameters<typeof stirringOnTheWay>[0]>) =>
  stirringOnTheWay({ ...drop, diameter: 80e-6, time: 0.02, ...change });

describe('stirringOnTheWay', () => {
  it('starts at Ranz and Marshall: 1 + 0.3 sqrt(Re) cbrt(Pr), 3.68 at Re 100 and Pr 0.71', () => {
    const density = (200e3 * 0.0289652) / (8.314462618 * 330);
    const slip = (100 * airViscosity(330)) / (density * 80e-6);
    expect(at({ slip, time: 1e-7 })).toBeGreaterThan(3.6);
    expect(at({ slip, time: 1e-7 })).toBeLessThan(3.72);
  });
  it('is 1 for a drop that swims along', () => {
    expect(at({ slip: 0 })).toBe(1);
  });
  it('dies away: the longer the way and the smaller the drop, the less', () => {
    expect(at({ time: 0.05 })).toBeLessThan(at({ time: 0.01 }));
    expect(at({ diameter: 20e-6 })).toBeLessThan(at({ diameter: 80e-6 }));
    expect(at({ time: 0.05 })).toBeGreaterThan(1);
  });
});

describe('airViscosity', () => {
  it('is 1.846e-5 Pa s at 300 K (Incropera and DeWitt, table A.4)', () => {
    expect(airViscosity(300)).toBeCloseTo(1.846e-5, 7);
  });
});
