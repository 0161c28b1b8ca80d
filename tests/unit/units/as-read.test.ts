import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asRead, convert, imperialUnits, offeredUnits, shownKinds } from '../../../core/units/index.ts';

describe('a number as it stands in a field', () => {
  it.each<[number, string, string, number]>([
    [209, 'kW', 'hp', 280.3],
    [100, 'mm', 'in', 3.937],
    [76, 'mm', 'in', 2.992],
    [6, 'mm', 'in', 0.236],
    [1300, 'kg', 'lb', 2866],
    [10, 'kg', 'lb', 22],
    [12_345, 'kg', 'lb', 27_216],
    [100.6, 'kPa', 'psi', 14.59],
    [700, 'kPa', 'psi', 101.5],
    [1, 'kPa', 'psi', 0.145],
    [1.5, 'm', 'ft', 4.92],
    [21.3, 'C', 'F', 70.34],
    [200, 'mL/min', 'gal/h', 3.17],
    [255, 'L/h', 'gal/h', 67.36],
    [0.335, 'kg/kWh', 'lb/hp h', 0.551],
    [4, 'L', 'gal', 1.06],
    [0.012, 'N s2/m2', 'lbf/mph2', 0.000539],
  ])('%f %s reads %f %s', (value, from, to, expected) => {
    expect(asRead(convert(value, from, to), to)).toBe(expected);
  });

  it.each([18.5, 18.4375, 1234.5678, 0.00012345, -4.25, 0, 6500])('what was typed stays: %f', (typed) => {
    expect(asRead(typed, 'psi')).toBe(typed);
  });

  it('what was typed in one unit and stored in another comes back as it was typed, in every unit offered', () => {
    const pairs = shownKinds.flatMap((kind) => {
      const ids = offeredUnits(kind).map((u) => u.id);
      return ids.flatMap((a) => ids.map((b) => [a, b] as const));
    });
    expect(pairs.length).toBeGreaterThan(100);
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.integer({ min: 1, max: 999_999 }),
        fc.integer({ min: 0, max: 4 }),
        ([shown, stored], n, d) => {
          const typed = n / 10 ** d;
          const kept = Number(convert(typed, shown, stored).toPrecision(12));
          expect(asRead(convert(kept, stored, shown), shown)).toBe(typed);
        },
      ),
    );
  });

  it('no field of imperial units shows a tail of digits', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shownKinds),
        fc.double({ min: 0.001, max: 1e4, noNaN: true }),
        (kind, si) => {
          const text = String(asRead(si * Math.PI, imperialUnits[kind]));
          expect(text.replace(/^-?0\.0*|[-.]/g, '').length).toBeLessThanOrEqual(5);
        },
      ),
    );
  });
});
