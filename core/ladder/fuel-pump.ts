import { petrol } from '../fluids/index.ts';
import type { Plan, Setup } from '../injection/index.ts';
import { toSi } from '../units/index.ts';

/**
 * Petrol that the pump delivers at the fuel pressure of full boost [kg/s]; null where it is not known.
 *
 * Valid:  at that pressure and the voltage it was stated for; below full boost a pump delivers more.
 */
export function fuelPumpDelivery(setup: Setup): number | null {
  const { fuelPump_L_h } = setup.engine;
  return fuelPump_L_h === null ? null : toSi(fuelPump_L_h, 'L/h') * petrol.density;
}

/**
 * Fuel needed at a boost over what the pump delivers; null where the pump is not known.
 *
 *   share = m_fuel(n_peak, b) (1 - alcohol share) / m_pump
 *
 * @param boost         gauge [Pa]
 * @param alcoholShare  of the fuel's air demand where a loop cuts petrol for it, else 0
 *
 * Valid:  at peak power, where most fuel burns; what runs back to the tank counts for nothing.
 * Source: continuity.
 * Check:  200 L/h of petrol at 745 kg/m^3 is 41.4 g/s; an engine that burns 20.7 g/s takes half.
 */
export function fuelPumpAt(setup: Setup, plan: Plan, boost: number, alcoholShare: number): number | null {
  const delivery = fuelPumpDelivery(setup);
  if (delivery === null) return null;
  return (plan.fuel.at(plan.path.peakSpeed_rad_s, boost) * (1 - alcoholShare)) / delivery;
}
