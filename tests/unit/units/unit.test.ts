import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  convert,
  fromSi,
  imperialUnits,
  kinds,
  metricUnits,
  offeredUnits,
  shownKinds,
  toSi,
  units,
  unitsOfKind,
} from '../../../core/units/index.ts';

describe('units', () => {
  it('one bar is 14.5038 psi (NIST SP 811, appendix B.8)', () => {
    expect(convert(1, 'bar', 'psi')).toBeCloseTo(14.5038, 4);
  });

  it('a horsepower is 745.6999 W and a PS 735.49875 W (NIST SP 811, appendix B.8)', () => {
    expect(toSi(1, 'hp')).toBeCloseTo(745.6999, 4);
    expect(toSi(1, 'PS')).toBeCloseTo(735.49875, 5);
  });

  it('a pound foot squared is 0.04214011 kg m² (NIST SP 811, appendix B.8)', () => {
    expect(toSi(1, 'lb ft2')).toBeCloseTo(0.04214011, 8);
  });

  it('a pound an hour is 0.1259979 g/s (NIST SP 811, appendix B.8)', () => {
    expect(convert(1, 'lb/h', 'g/s')).toBeCloseTo(0.1259979, 7);
  });

  it('imperial differs from metric in every quantity but those that both systems read alike', () => {
    const alike = shownKinds.filter((kind) => imperialUnits[kind] === metricUnits[kind]);
    // Fluid is rated in mL/min and its density in kg/L under either (common practice); the rest has no other unit.
    expect(alike).toEqual([
      'time',
      'acceleration',
      'volume',
      'angle',
      'engineSpeed',
      'density',
      'volumeFlow',
      'share',
      'lambda',
      'voltage',
      'energyPerMass',
      'number',
    ]);
    for (const kind of shownKinds)
      for (const choice of [metricUnits, imperialUnits])
        expect(
          offeredUnits(kind).map((u) => u.id),
          kind,
        ).toContain(choice[kind]);
  });

  it('212 F is 100 C is 373.15 K', () => {
    expect(toSi(212, 'F')).toBeCloseTo(373.15, 9);
    expect(convert(212, 'F', 'C')).toBeCloseTo(100, 9);
  });

  it('every kind has a unit and every unit survives a round trip', () => {
    for (const kind of kinds) expect(unitsOfKind(kind).length).toBeGreaterThan(0);
    fc.assert(
      fc.property(
        fc.constantFrom(...units.keys()),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (id, value) => Math.abs(fromSi(toSi(value, id), id) - value) <= 1e-9 * Math.max(1, Math.abs(value)),
      ),
    );
  });

  it('two kinds never convert into each other', () => {
    expect(() => convert(1, 'bar', 'kg')).toThrow();
  });
});
