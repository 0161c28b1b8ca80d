import { fail, ok, type Result } from '../result/index.ts';
import { celsius } from '../units/index.ts';
import { ethanolWaterDensity } from './ethanol-water-density.ts';
import { type Mix, mixByMass } from './mix.ts';
import { mixByFinishedVolume, mixDensity } from './mix-density.ts';
import type { AlcoholId } from './substance.ts';

/** Cubic expansion of hydrometer glass [1/K], OIML R 22. */
const glassExpansion = 25e-6;

export type HydrometerReading =
  /** A density scale [kg/m^3], relative density times 999.0 (15 C) or 998.2 (20 C). */
  | { readonly scale: 'density'; readonly value: number }
  /** An alcoholometer: % ethanol by volume at 20 C as a share, whatever floats under it. */
  | { readonly scale: 'ethanol-by-volume'; readonly value: number };

export type Strength = {
  readonly mix: Mix;
  /** Density of the fluid at its temperature [kg/m^3]. */
  readonly density: number;
  /** Half width of the mass share that the reading's uncertainty allows. */
  readonly massShareHalf: number;
};

/** The mass share of one alcohol that has this density; density falls with strength all the way. */
function shareOfDensity(alcohol: AlcoholId, density: number, temperature: number): Result<number> {
  const at = (share: number): Result<number> => {
    const mix = mixByMass({ [alcohol]: share });
    return mix.ok ? mixDensity(mix.value, temperature) : mix;
  };
  const [strong, weak] = [at(1), at(0)];
  if (!strong.ok) return strong;
  if (!weak.ok) return weak;
  // 0.3 kg/m^3: as far as the tables disagree at the ends.
  if (density > weak.value + 0.3 || density < strong.value - 0.3)
    return fail({
      code: 'fluids/reading-outside',
      facts: { density, lowest: strong.value, highest: weak.value, temperature, alcohol },
    });
  let low = 0;
  let high = 1;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    const value = at(middle);
    if (!value.ok) return value;
    if (value.value > density) low = middle;
    else high = middle;
  }
  return ok((low + high) / 2);
}

/**
 * Strength of a fluid from a hydrometer, at the temperature of the fluid.
 *
 *   rho = reading / (1 + g (T - 293.15))      the glass grows with the fluid, reading set at 20 C
 *
 * @param alcohol            what it is mixed of besides water: density can't tell methanol from ethanol
 * @param temperature        of the fluid [K]
 * @param densityUncertainty half width of the density [kg/m^3], 1 unless told: half a division of a plain one
 *
 * Valid:  0 to 40 C; a sweetener, dye or soap in a bought fluid moves it.
 * Errors: fluids/reading-outside, fluids/temperature-outside.
 * Source: OIML R 22:1975 (glass expansion, alcoholometer at 20 C).
 * Check:  a density of 915.6 at 20 C with methanol is 50 % by mass.
 */
export function strengthOf(
  alcohol: AlcoholId,
  reading: HydrometerReading,
  temperature: number,
  densityUncertainty = 1,
): Result<Strength> {
  let scale = reading.value;
  if (reading.scale === 'ethanol-by-volume') {
    const marked = mixByFinishedVolume({ ethanol: reading.value });
    if (!marked.ok) return marked;
    scale = ethanolWaterDensity(marked.value.massShares.ethanol, celsius(20));
  }
  const density = scale / (1 + glassExpansion * (temperature - celsius(20)));
  const share = shareOfDensity(alcohol, density, temperature);
  if (!share.ok) return share;
  const mix = mixByMass({ [alcohol]: Math.min(1, Math.max(0, share.value)) });
  if (!mix.ok) return mix;
  // The slope of strength over density, read across the uncertainty itself; one-sided at the ends.
  const weaker = shareOfDensity(alcohol, density + densityUncertainty, temperature);
  const stronger = shareOfDensity(alcohol, density - densityUncertainty, temperature);
  const massShareHalf = Math.max(
    weaker.ok ? share.value - weaker.value : 0,
    stronger.ok ? stronger.value - share.value : 0,
  );
  return ok({ mix: mix.value, density, massShareHalf });
}
