import { describe, expect, it } from 'vitest';
import {
  blendAirFuel,
  flashPoint,
  mixByMass,
  mixDensity,
  mixPoured,
  petrolBlend,
  petrolDensity,
  pure,
  strengthOf,
} from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius, metricUnits } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';

const code = (result: { ok: boolean; problems?: readonly { code: string }[] }) =>
  result.ok ? [] : (result.problems ?? []).map((p) => p.code);

describe('a mix as a person describes it', () => {
  it('shares over the whole are refused with what to do', () => {
    const result = mixPoured({ methanol: 0.7, ethanol: 0.6 });
    if (result.ok) throw new Error('expected a refusal');
    for (const language of ['en', 'de'] as const) {
      const said = problemText(result.problems[0], createShow(language, metricUnits));
      expect(said.message).toContain(language === 'en' ? '130.0' : '130,0');
      expect(said.remedy.length).toBeGreaterThan(20);
    }
  });

  it('all faults of the shares come at once', () => {
    expect(code(mixByMass({ methanol: -0.1, ethanol: Number.NaN }))).toEqual([
      'fluids/share-negative',
      'fluids/share-missing',
    ]);
  });

  it('a temperature outside the tables names the range', () => {
    expect(code(mixDensity(pure('methanol'), celsius(90)))).toEqual(['fluids/temperature-outside']);
    expect(code(mixPoured({ methanol: 0.5 }, celsius(-60)))).toEqual(['fluids/temperature-outside']);
  });

  it('nothing that burns has no air/fuel ratio', () => {
    expect(code(blendAirFuel({ water: 1 }))).toEqual(['fluids/nothing-burns']);
  });

  it('water alone has no flash point', () => {
    expect(unwrap(flashPoint(pure('water')))).toBeNull();
  });

  it('the flash point shown is the cautious one', () => {
    const flash = unwrap(flashPoint(unwrap(mixPoured({ methanol: 0.5 }))));
    expect(flash?.cautious).toBeLessThan(flash?.temperature ?? 0);
  });
});

describe('a hydrometer', () => {
  it('915.6 kg/m3 at 20 C with methanol is half by mass (CRC Handbook, 102nd ed.)', () => {
    const found = unwrap(strengthOf('methanol', { scale: 'density', value: 915.6 }, celsius(20)));
    // The table's own tolerance of 0.4 kg/m3 is 0.2 % of mass here.
    expect(found.mix.massShares.methanol).toBeCloseTo(0.5, 2);
    expect(found.massShareHalf).toBeCloseTo(0.0048, 3);
  });

  it('an alcoholometer in spirit of 40 % at 20 C finds 33.3 % by mass (OIML R 22)', () => {
    const found = unwrap(strengthOf('ethanol', { scale: 'ethanol-by-volume', value: 0.4 }, celsius(20)));
    expect(found.mix.massShares.ethanol).toBeCloseTo(0.333, 4);
  });

  it('a reading heavier than water is refused', () => {
    expect(code(strengthOf('ethanol', { scale: 'density', value: 1010 }, celsius(20)))).toEqual([
      'fluids/reading-outside',
    ]);
  });
});

describe('pump petrol', () => {
  it('a share over 100 % is refused', () => {
    expect(code(petrolBlend(1.1))).toEqual(['fluids/shares-over-whole']);
  });

  it('plain petrol is 745 kg/m3 at 15 C, and ethanol makes it heavier', () => {
    expect(unwrap(petrolDensity(unwrap(petrolBlend(0)), celsius(15)))).toBeCloseTo(745, 9);
    expect(unwrap(petrolDensity(unwrap(petrolBlend(0.85)), celsius(15)))).toBeGreaterThan(780);
  });
});
