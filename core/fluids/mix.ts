import { fail, ok, type Problem, type Result } from '../result/index.ts';
import { celsius } from '../units/index.ts';
import {
  type AlcoholId,
  alcoholIds,
  liquidDensity,
  type SubstanceId,
  substanceIds,
  substances,
} from './substance.ts';

declare const checked: unique symbol;

/**
 * A spray fluid: mass shares of water, methanol and ethanol that add up to 1. Only the makers below can build
 * one, so a volume share can't be taken for a mass share.
 */
export type Mix = {
  readonly massShares: { readonly [S in SubstanceId]: number };
  readonly [checked]: true;
};

/** Shares of the alcohols; the rest is water. */
export type AlcoholShares = { readonly [A in AlcoholId]?: number };

const zero = { water: 0, methanol: 0, ethanol: 0 };

function mixOf(masses: { readonly [S in SubstanceId]: number }): Mix {
  const whole = masses.water + masses.methanol + masses.ethanol;
  return {
    massShares: {
      water: masses.water / whole,
      methanol: masses.methanol / whole,
      ethanol: masses.ethanol / whole,
    },
  } as Mix;
}

/** One liquid alone. */
export function pure(id: SubstanceId): Mix {
  return mixOf({ ...zero, [id]: 1 });
}

/** The shares as given, or every fault in them. Shared with petrol, which takes ethanol alone. */
export function checkedShares(shares: AlcoholShares): Result<{ readonly [A in AlcoholId]: number }> {
  const given = { methanol: shares.methanol ?? 0, ethanol: shares.ethanol ?? 0 };
  const problems: Problem[] = [];
  for (const substance of alcoholIds) {
    const share = given[substance];
    if (!Number.isFinite(share)) problems.push({ code: 'fluids/share-missing', facts: { substance } });
    else if (share < 0) problems.push({ code: 'fluids/share-negative', facts: { substance, share } });
  }
  const sum = given.methanol + given.ethanol;
  // 1e-9: thirds that were typed as percent must still add up to a whole.
  if (sum > 1 + 1e-9) problems.push({ code: 'fluids/shares-over-whole', facts: { sum } });
  const [first, ...rest] = problems;
  return first ? fail(first, ...rest) : ok(given);
}

/**
 * A mix by mass.
 *
 * @param shares  mass of each alcohol over mass of the mix, 0 to 1; water is the rest
 * Errors: fluids/share-negative, fluids/shares-over-whole, fluids/share-missing.
 */
export function mixByMass(shares: AlcoholShares): Result<Mix> {
  const given = checkedShares(shares);
  if (!given.ok) return given;
  const water = Math.max(0, 1 - given.value.methanol - given.value.ethanol);
  return ok(mixOf({ water, ...given.value }));
}

/**
 * A mix by volume as poured: so much of each bottle, measured before they meet. Mass is conserved, volume is not.
 *
 *   w_i = v_i rho_i / sum(v rho)
 *
 * @param shares       volume of each alcohol over the sum of the volumes poured, 0 to 1; water is the rest
 * @param temperature  of the liquids when measured [K], 20 C unless told
 *
 * Source: conservation of mass.
 * Check:  half and half with methanol at 20 C is 44.2 % methanol by mass.
 */
export function mixPoured(shares: AlcoholShares, temperature: number = celsius(20)): Result<Mix> {
  const given = checkedShares(shares);
  if (!given.ok) return given;
  const volumes = {
    water: Math.max(0, 1 - given.value.methanol - given.value.ethanol),
    ...given.value,
  };
  const masses = { ...zero };
  for (const id of substanceIds) {
    const density = liquidDensity(id, temperature);
    if (!density.ok) return density;
    masses[id] = volumes[id] * density.value;
  }
  return ok(mixOf(masses));
}

/**
 * Volume shares that would have to be poured to make this mix, at `temperature` [K].
 */
export function pouredShares(
  mix: Mix,
  temperature: number = celsius(20),
): Result<{ readonly [S in SubstanceId]: number }> {
  const volumes = { ...zero };
  for (const id of substanceIds) {
    const density = liquidDensity(id, temperature);
    if (!density.ok) return density;
    volumes[id] = mix.massShares[id] / density.value;
  }
  const whole = volumes.water + volumes.methanol + volumes.ethanol;
  return ok({
    water: volumes.water / whole,
    methanol: volumes.methanol / whole,
    ethanol: volumes.ethanol / whole,
  });
}

/** Mole shares of the parts. */
export function moleShares(mix: Mix): { readonly [S in SubstanceId]: number } {
  const moles = { ...zero };
  for (const id of substanceIds) moles[id] = mix.massShares[id] / substances[id].molarMass;
  const whole = moles.water + moles.methanol + moles.ethanol;
  return { water: moles.water / whole, methanol: moles.methanol / whole, ethanol: moles.ethanol / whole };
}

/** Mass share of all alcohol together. */
export function alcoholShare(mix: Mix): number {
  return mix.massShares.methanol + mix.massShares.ethanol;
}
