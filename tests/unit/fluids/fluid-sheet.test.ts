import { describe, expect, it } from 'vitest';
import { FluidJsonSchema, fluidJson, fluidOf } from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, languages, noteText } from '../../../core/words/index.ts';

const codes = (input: Parameters<typeof fluidOf>[0]) => unwrap(fluidOf(input)).notes.map((n) => n.code);

describe('the sheet of a fluid', () => {
  it('of half and half methanol has the published numbers (CRC Handbook, 102nd ed., poured at 20 C)', () => {
    const json = fluidJson(unwrap(fluidOf({ methanol_percent: 50 })));
    expect(Math.abs(json.density_kg_m3 - 926.9)).toBeLessThan(0.6);
    expect(Math.abs(json.mass_percent.methanol - 44.22)).toBeLessThan(0.04);
    expect(Math.abs(json.contraction_percent - 3.46)).toBeLessThan(0.08);
    expect(Math.abs(json.finished_percent.methanol - 51.79)).toBeLessThan(0.06);
    expect(FluidJsonSchema.parse(JSON.parse(JSON.stringify(json)))).toEqual(json);
  });

  it('gives the cautious flash point and says when it can burn where it is kept', () => {
    const warm = unwrap(fluidOf({ methanol_percent: 50, ambient_C: 30 }));
    expect(warm.canBurnAtAmbient).toBe(true);
    expect(codes({ methanol_percent: 50, ambient_C: 30 })).toContain('fluids/burns-at-ambient');
    expect(codes({ methanol_percent: 50, ambient_C: 0 })).toContain('fluids/burns-when-warmer');
    const json = fluidJson(warm);
    expect(json.flash_C).toBeLessThan(json.flashEstimate_C ?? 0);
  });

  it('cautions of methanol, of a strong mix, and of frost', () => {
    expect(codes({ methanol_percent: 70 })).toEqual(
      expect.arrayContaining(['fluids/strong-mix', 'fluids/methanol-is-toxic', 'fluids/flame-unseen']),
    );
    expect(codes({ methanol_percent: 10, ambient_C: -10 })).toContain('fluids/freezes-at-ambient');
    expect(codes({})).toEqual(['fluids/does-not-burn']);
    expect(codes({ methanol_percent: 20, ethanol_percent: 20 })).toContain('fluids/three-parts-estimated');
  });

  it('a hydrometer reading beats the shares', () => {
    const json = fluidJson(
      unwrap(
        fluidOf({
          methanol_percent: 10,
          hydrometer: { alcohol: 'methanol', scale: 'density', value: 915.6 },
        }),
      ),
    );
    expect(json.mass_percent.methanol).toBeCloseTo(50, 0);
    expect(json.strengthHalf_percent).toBeGreaterThan(0.3);
  });

  it('says the same in both languages', () => {
    for (const note of unwrap(fluidOf({ methanol_percent: 60, ethanol_percent: 10 })).notes)
      for (const language of languages)
        expect(noteText(note, createShow(language, metricUnits))).not.toMatch(/NaN|undefined/);
  });

  it('bad shares are refused', () => {
    expect(fluidOf({ methanol_percent: 130 }).ok).toBe(false);
    expect(fluidOf({ methanol_percent: -1 }).ok).toBe(false);
    expect(fluidOf({ methanol_percent: 50, temperature_C: 95 }).ok).toBe(false);
  });
});
