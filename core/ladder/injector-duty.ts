import { petrol } from '../fluids/index.ts';
import { interpolate, type Plan, type Setup } from '../injection/index.ts';
import { rpm, toSi } from '../units/index.ts';

/** Share of peak boost from which the pull is on its plateau (common practice). */
const plateauFrom = 0.9;

/**
 * Highest injector duty of a pull at a boost, as a share; null where neither duty nor injectors are known.
 *
 *   duty(b) = max duty_i (p_a + b) / (p_a + b_i) (1 - alcohol share)
 *
 * From logged duty where there is one, else from fuel flow over static flow. Fuel pressure is taken to follow the
 * manifold; the gate of fuel pressure watches that.
 *
 * @param ambientPressure  absolute [Pa]
 * @param boost            gauge [Pa]
 * @param alcoholShare     of the fuel's air demand where a loop cuts petrol for it, else 0
 *
 * Valid:  dead time included in the logged duty, so a little low for a large rise.
 * Source: continuity; injectors static at 100 % are lean the next moment (common practice: plan to 85 %).
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
  const { path } = plan;
  if (injectors.duty.length > 0) {
    let most = 0;
    for (const point of injectors.duty) {
      const speed = rpm(point.engineSpeed_rpm);
      const pulled = interpolate(path.engineSpeed_rad_s, path.boost, speed);
      const logged = point.boost_kPa === null ? pulled : point.boost_kPa * 1e3;
      // Off boost the engine does not see the new target: only states near the plateau are raised.
      const isOnPlateau = path.peakBoost <= 0 || pulled > plateauFrom * path.peakBoost;
      const then = isOnPlateau ? boost : logged;
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
  return (plan.fuel.at(path.peakSpeed_rad_s, boost) * cut) / fullFlow;
}
