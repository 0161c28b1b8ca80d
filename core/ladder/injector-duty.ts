import { petrol } from '../fluids/index.ts';
import type { Plan, Setup } from '../injection/index.ts';
import { rpm, toSi } from '../units/index.ts';

/**
 * Highest injector duty of a pull at a boost, as a share; null where neither duty nor injectors are known.
 *
 *   duty(b) = max duty_i (p_a + b) / (p_a + b_i) (1 - alcohol share)
 *
 * From logged duty where there is one, else from fuel flow over static flow. Fuel pressure is taken to follow the
 * manifold; the gate of fuel pressure watches that.
 *
 * @param alcoholShare  of the fuel's air demand where a loop cuts petrol for it, else 0
 *
 * Valid:  dead time included in the logged duty, so a little low for a large rise.
 * Source: continuity; injectors static at 100 % are lean the next moment (field practice: plan to 85 %).
 */
export function injectorDutyAt(
  setup: Setup,
  plan: Plan,
  ambientPressure: number,
  boost: number,
  alcoholShare: number,
): number | null {
  const { injectors } = setup.engine;
  if (!injectors) return null;
  const cut = 1 - alcoholShare;
  if (injectors.duty.length > 0) {
    let most = 0;
    for (const point of injectors.duty) {
      const speed = rpm(point.engineSpeed_rpm);
      const logged = point.boost_kPa === null ? boostAt(plan, speed) : point.boost_kPa * 1e3;
      // Off boost the engine does not see the new target: only states near the plateau are raised.
      const driven = plan.path.peakBoost > 0 ? boostAt(plan, speed) / plan.path.peakBoost : 1;
      const then = driven > 0.9 ? boost : logged;
      most = Math.max(
        most,
        (point.duty_percent / 100) * ((ambientPressure + then) / (ambientPressure + logged)),
      );
    }
    return most * cut;
  }
  const fullFlow =
    injectors.count *
    toSi(injectors.flow_mL_min, 'mL/min') *
    petrol.density *
    Math.sqrt((injectors.fuelPressure_kPa ?? injectors.ratedPressure_kPa) / injectors.ratedPressure_kPa);
  return (plan.fuel.at(plan.path.peakSpeed_rad_s, boost) * cut) / fullFlow;
}

/** Boost of the pull at an engine speed. */
function boostAt(plan: Plan, speed: number): number {
  const { engineSpeed_rad_s, boost } = plan.path;
  for (let i = 1; i < boost.length; i++) {
    const [n0 = 0, n1 = 0] = [engineSpeed_rad_s[i - 1], engineSpeed_rad_s[i]];
    if (speed > n1) continue;
    const [b0 = 0, b1 = 0] = [boost[i - 1], boost[i]];
    const share = n1 > n0 ? Math.max(0, (speed - n0) / (n1 - n0)) : 0;
    return b0 + share * (b1 - b0);
  }
  return boost[boost.length - 1] ?? 0;
}
