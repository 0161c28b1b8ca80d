import { fail, ok, type Result } from '../result/index.ts';
import { celsius } from '../units/index.ts';
import { ethanolWaterDensity, ethanolWaterValid } from './ethanol-water-density.ts';
import { methanolWaterExcessVolume, methanolWaterValid } from './methanol-water-volume.ts';
import { type AlcoholShares, alcoholShare, checkedShares, type Mix, mixByMass, pure } from './mix.ts';
import { substances } from './substance.ts';
import { curveAt } from './temperature-curve.ts';

/** Range of a mix's density [K]. */
export const mixDensityValid = { from: celsius(-20), to: celsius(60) };

const within = (range: { from: number; to: number }, t: number) =>
  Math.min(range.to, Math.max(range.from, t));

/** Specific volume that mixing adds, negative [m^3/kg]. */
function excessVolume(mix: Mix, temperature: number): number {
  const alcohol = alcoholShare(mix);
  if (alcohol === 0) return 0;
  // Outside a formula's range its excess volume is held: it moves by less than 2 % per 10 K, while the volumes
  // of the pure parts, which move by 1 %, have their own wider curves.
  let excess = 0;
  if (mix.massShares.methanol > 0) {
    const t = within(methanolWaterValid, temperature);
    excess += (mix.massShares.methanol / alcohol) * methanolWaterExcessVolume(alcohol, t);
  }
  if (mix.massShares.ethanol > 0) {
    const t = within(ethanolWaterValid, temperature);
    const parts =
      alcohol / curveAt(substances.ethanol.curves.density, t) +
      (1 - alcohol) / curveAt(substances.water.curves.density, t);
    excess += (mix.massShares.ethanol / alcohol) * (1 / ethanolWaterDensity(alcohol, t) - parts);
  }
  return excess;
}

/**
 * Density of a mix at atmospheric pressure [kg/m^3].
 *
 *   1 / rho = sum w_i / rho_i + excess volume
 *
 * Valid:  -20 to 60 C, liquid. Ethanol-water up to 40 C within 0.1 kg/m^3 of OIML R 22; methanol-water within 0.4
 *         at 20 C and 1 from 0 to 40 C; above 40 C and for all three parts at once within 3 (excess volume held,
 *         or shared between the two alcohols).
 * Errors: fluids/temperature-outside.
 * Source: see ethanol-water-density.ts and methanol-water-volume.ts.
 * Check:  half and half by volume with methanol at 20 C is 926.9.
 */
export function mixDensity(mix: Mix, temperature: number): Result<number> {
  const { from, to } = mixDensityValid;
  if (!(temperature >= from - 1e-6 && temperature <= to + 1e-6))
    return fail({
      code: 'fluids/temperature-outside',
      facts: { property: 'density', temperature, from, to },
    });
  const { water, methanol, ethanol } = mix.massShares;
  const volume =
    water / curveAt(substances.water.curves.density, temperature) +
    methanol / curveAt(substances.methanol.curves.density, temperature) +
    ethanol / curveAt(substances.ethanol.curves.density, temperature) +
    excessVolume(mix, temperature);
  return ok(1 / volume);
}

/**
 * Share of the poured volume that is lost on mixing, both measured at `temperature`.
 *
 * Check: half and half with methanol at 20 C loses 3.46 %.
 */
export function contraction(mix: Mix, temperature: number = celsius(20)): Result<number> {
  const density = mixDensity(mix, temperature);
  if (!density.ok) return density;
  const { water, methanol, ethanol } = mix.massShares;
  const poured =
    water / curveAt(substances.water.curves.density, temperature) +
    methanol / curveAt(substances.methanol.curves.density, temperature) +
    ethanol / curveAt(substances.ethanol.curves.density, temperature);
  return ok(1 - 1 / density.value / poured);
}

/**
 * Volume of each pure alcohol over the volume of the finished mix: strength as a label or an alcoholometer has it.
 *
 * Check: half and half by volume poured with methanol at 20 C measures 51.8 %.
 */
export function finishedShares(
  mix: Mix,
  temperature: number = celsius(20),
): Result<{ readonly methanol: number; readonly ethanol: number }> {
  const density = mixDensity(mix, temperature);
  if (!density.ok) return density;
  const share = (id: 'methanol' | 'ethanol') =>
    (mix.massShares[id] * density.value) / curveAt(substances[id].curves.density, temperature);
  return ok({ methanol: share('methanol'), ethanol: share('ethanol') });
}

/**
 * A mix by volume of the finished mix, the way strength stands on a label.
 *
 * @param shares       volume of each pure alcohol over the volume of the mix, 0 to 1; water fills up
 * @param temperature  both volumes measured at [K], 20 C unless told, as on labels
 *
 * Errors: those of mixByMass.
 * Check:  ethanol of 40 % by volume is 33.3 % by mass.
 */
export function mixByFinishedVolume(shares: AlcoholShares, temperature: number = celsius(20)): Result<Mix> {
  const given = checkedShares(shares);
  if (!given.ok) return given;
  const sum = given.value.methanol + given.value.ethanol;
  if (sum === 0) return ok(pure('water'));
  const ratio = {
    methanol: given.value.methanol * curveAt(substances.methanol.curves.density, temperature),
    ethanol: given.value.ethanol * curveAt(substances.ethanol.curves.density, temperature),
  };
  const mass = ratio.methanol + ratio.ethanol;
  const at = (alcohol: number) =>
    mixByMass({ methanol: (alcohol * ratio.methanol) / mass, ethanol: (alcohol * ratio.ethanol) / mass });
  // Mass of alcohol in a volume of mix, w rho(w), rises with w all the way: halve until it is found.
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const mix = at(middle);
    if (!mix.ok) return mix;
    const density = mixDensity(mix.value, temperature);
    if (!density.ok) return density;
    if (middle * density.value < mass) low = middle;
    else high = middle;
  }
  return at((low + high) / 2);
}
