import {
  latentHeat,
  liquidHeatCapacity,
  type SubstanceId,
  substanceIds,
  substances,
  vapourPressure,
} from '../fluids/index.ts';
import { fail, ok, type Result } from '../result/index.ts';
import { celsius } from '../units/index.ts';
import {
  type ChargeAir,
  dryAirHeatCapacity,
  dryAirMolarMass,
  noParts,
  type PartsPerAir,
  vapourHeat,
} from './charge-air.ts';

/** Drops in the charge: mass of each part per kg of dry air, at one temperature [K]. */
export type Liquid = { readonly parts: PartsPerAir; readonly temperature: number };
export const noLiquid: Liquid = { parts: noParts, temperature: celsius(20) };

/** Charge and drops after they have come to agree. */
export type Evaporated = {
  readonly air: ChargeAir;
  /** What is left as drops, those that took no part included. */
  readonly liquid: Liquid;
  /** Of what took part nothing more can evaporate: the air is full. */
  readonly isFull: boolean;
};

export function massOf(parts: PartsPerAir): number {
  return parts.water + parts.methanol + parts.ethanol;
}

/** A record's value, held at the ends of its range: 110 C is hotter than any drop gets below 4 bar. */
function held(
  property: (id: SubstanceId, temperature: number) => Result<number>,
  id: SubstanceId,
  temperature: number,
  from: number,
  to: number,
): number {
  const value = property(id, Math.min(to, Math.max(from, temperature)));
  if (!value.ok) throw new Error(`${id} ends inside its own range at ${temperature} K`);
  return value.value;
}
const coldest = celsius(-20);
const saturation = (id: SubstanceId, t: number) => held(vapourPressure, id, t, coldest, celsius(110));
const liquidHeat = (id: SubstanceId, t: number) => held(liquidHeatCapacity, id, t, coldest, celsius(100));
const latent = (id: SubstanceId, t: number) => held(latentHeat, id, t, coldest, celsius(150));

/**
 * Who is vapour and who is liquid at a pressure and temperature: ideal gas over an ideal liquid.
 *
 *   p_i = x_i p_sat,i(T)                           Raoult
 *   N_i = x_i (L + K_i (N - L)),  K_i = p_sat,i / p
 *
 * One unknown, the moles of liquid L: sum N_i / (L + K_i (N - L)) = 1 falls all the way where it is above 1.
 *
 * @param total  vapour and liquid of each part [kg per kg of dry air]
 * @returns      vapour of each part
 */
export function vapourAt(total: PartsPerAir, pressure: number, temperature: number): PartsPerAir {
  const moles = { ...noParts } as Record<SubstanceId, number>;
  const ratio = { ...noParts } as Record<SubstanceId, number>;
  let sum = 0;
  for (const id of substanceIds) {
    if (total[id] <= 0) continue;
    moles[id] = total[id] / substances[id].molarMass;
    ratio[id] = saturation(id, temperature) / pressure;
    sum += moles[id];
  }
  const all = 1 / dryAirMolarMass + sum;
  let dryExcess = -1;
  for (const id of substanceIds) if (moles[id] > 0) dryExcess += moles[id] / (ratio[id] * all);
  if (sum === 0 || dryExcess <= 0) return total;
  // The sum is convex and above 1 at no liquid: Newton from there comes down to the root without passing it.
  let liquid = 0;
  for (let i = 0; i < 50; i++) {
    let [value, slope] = [-1, 0];
    for (const id of substanceIds) {
      if (moles[id] <= 0) continue;
      const under = liquid + ratio[id] * (all - liquid);
      value += moles[id] / under;
      slope -= (moles[id] * (1 - ratio[id])) / (under * under);
    }
    if (!(slope < 0)) break;
    const step = -value / slope;
    liquid = Math.min(sum, liquid + step);
    if (step < 1e-12 * sum) break;
  }
  const vapour = { ...noParts } as Record<SubstanceId, number>;
  for (const id of substanceIds) {
    if (moles[id] <= 0) continue;
    const x = moles[id] / (liquid + ratio[id] * (all - liquid));
    // Rounding must never make vapour out of nothing.
    vapour[id] = Math.min(total[id], x * ratio[id] * (all - liquid) * substances[id].molarMass);
  }
  return vapour;
}

/**
 * Drops and air come to one temperature at constant pressure, no heat from outside: what evaporates cools both,
 * until the drops are gone or the air is full.
 *
 *   (c_a + sum v_i c_v,i)(T1 - T) = sum e_i (h_fg,i(T_l) + c_v,i (T - T_l)) + sum (m_i - e_i) c_l,i (T - T_l)
 *
 * @param air            before
 * @param liquid         drops before
 * @param takingPart     share of the drops that has time to evaporate, 0 to 1; see droplet.ts
 *
 * Valid:  -20 to 110 C, 50 to 400 kPa. Raoult: alcohol leaves a lean mix up to 40 % sooner than said (activity of
 *         methanol and ethanol in water), so cooling is a little low there; water alone is exact.
 * Errors: charge/colder-than-known.
 * Source: first law; Raoult's law. Water alone must agree with adiabatic saturation (psychrolib; ASHRAE
 *         Handbook Fundamentals 2017, chapter 1, equation 33).
 * Check:  dry air of 60 C over water ends at 21.25 C with 15.9 g per kg.
 */
export function evaporate(air: ChargeAir, liquid: Liquid, takingPart = 1): Result<Evaporated> {
  const share = Math.min(1, Math.max(0, takingPart));
  if (massOf(liquid.parts) * share <= 0) return ok({ air, liquid, isFull: false });
  const total = { ...noParts } as Record<SubstanceId, number>;
  for (const id of substanceIds) total[id] = air.vapour[id] + share * liquid.parts[id];

  const reference = liquid.temperature;
  let airSide = dryAirHeatCapacity;
  for (const id of substanceIds)
    if (air.vapour[id] > 0) airSide += air.vapour[id] * vapourHeat(id, (air.temperature + reference) / 2);
  /** Heat given less heat taken at a common temperature; falls all the way. */
  const surplus = (temperature: number) => {
    const vapour = vapourAt(total, air.pressure, temperature);
    const middle = (temperature + reference) / 2;
    let taken = 0;
    for (const id of substanceIds) {
      if (total[id] <= 0) continue;
      // Negative where humid air gives water to cold drops.
      const evaporated = vapour[id] - air.vapour[id];
      const left = liquid.parts[id] - evaporated;
      taken += evaporated * (latent(id, reference) + vapourHeat(id, middle) * (temperature - reference));
      taken += left * liquidHeat(id, middle) * (temperature - reference);
    }
    return airSide * (air.temperature - temperature) - taken;
  };
  // Condensation in humid air can warm cold drops past the air: 60 K is more than any sky holds.
  let [low, high] = [coldest, Math.max(air.temperature, reference) + 60];
  let [above, below] = [surplus(low), surplus(high)];
  if (!(above >= 0))
    return fail({
      code: 'charge/colder-than-known',
      facts: { lowest: coldest, fluidOverAir: massOf(liquid.parts) },
    });
  // False position with Illinois' halving: a ladder solves some thousand of these.
  let temperature = low;
  let side = 0;
  for (let i = 0; i < 80 && high - low > 1e-7; i++) {
    temperature = (low * below - high * above) / (below - above);
    const value = surplus(temperature);
    if (Math.abs(value) < 1e-5) break;
    if (value > 0) {
      [low, above] = [temperature, value];
      if (side === 1) below /= 2;
      side = 1;
    } else {
      [high, below] = [temperature, value];
      if (side === -1) above /= 2;
      side = -1;
    }
  }
  const vapour = vapourAt(total, air.pressure, temperature);
  const left = { ...noParts } as Record<SubstanceId, number>;
  let wet = 0;
  for (const id of substanceIds) {
    left[id] = Math.max(0, liquid.parts[id] - (vapour[id] - air.vapour[id]));
    wet += total[id] - vapour[id];
  }
  return ok({
    air: { ...air, temperature, vapour },
    liquid: { parts: left, temperature },
    isFull: wet > 1e-9,
  });
}
