import { ok, type Result } from '../result/index.ts';
import type { Mix } from './mix.ts';
import { partialPressures } from './mix-vapour-pressure.ts';
import { alcoholIds, substances, vapourPressure } from './substance.ts';

export type FlashPoint = {
  /** Estimate [K]. */
  readonly temperature: number;
  /** Estimate less its worst error: the one to decide by, and the one to show [K]. */
  readonly cautious: number;
};

/** Worst error of the estimate for a mix [K]; a pure alcohol already stands at its lowest published value. */
const worstError = { methanol: 6, ethanol: 3 };

/** Vapour of the mix against the vapour each alcohol has at its own flash point; 1 at the mix's flash point. */
function richness(mix: Mix, temperature: number): Result<number> {
  const pressures = partialPressures(mix, temperature);
  if (!pressures.ok) return pressures;
  let sum = 0;
  for (const id of alcoholIds) {
    const flash = substances[id].flashPoint;
    if (flash === null || mix.massShares[id] === 0) continue;
    const needed = vapourPressure(id, flash.temperature);
    if (!needed.ok) return needed;
    sum += pressures.value[id] / needed.value;
  }
  return ok(sum);
}

/**
 * Closed-cup flash point, or null where the mix has none below 100 C.
 *
 *   sum x_i g_i p_i(T) / p_i(T_flash,i) = 1
 *
 * Valid:  ethanol-water within 3 K of a secondary list; methanol-water is an estimate, +/-6 K. `cautious` takes
 *         that off. Spray, heat or a fire beside it light a mix below any flash point.
 * Source: Liaw et al., J. Loss Prev. Process Ind. 15 (2002) 429 (from memory); pure flash points IEC 60079-20-1.
 * Check:  ethanol of 40 % by volume: 26 C within 3 K.
 */
export function flashPoint(mix: Mix): Result<FlashPoint | null> {
  const { methanol, ethanol } = mix.massShares;
  if (methanol + ethanol === 0) return ok(null);
  let low = 273.15;
  let high = 373.15;
  const atBoil = richness(mix, high);
  if (!atBoil.ok) return atBoil;
  if (atBoil.value < 1) return ok(null);
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    const value = richness(mix, middle);
    if (!value.ok) return value;
    if (value.value < 1) low = middle;
    else high = middle;
  }
  const temperature = (low + high) / 2;
  const isPure = mix.massShares.water === 0 && (methanol === 0 || ethanol === 0);
  const error = isPure ? 0 : methanol > 0 ? worstError.methanol : worstError.ethanol;
  return ok({ temperature, cautious: temperature - error });
}
