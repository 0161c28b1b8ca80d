import { chargeAlong } from '../charge/index.ts';
import { deliveredAt, type Plan, type Setup } from '../injection/index.ts';
import type { ChargeModel } from './charge-of-setup.ts';
import { fuelPumpAt } from './fuel-pump.ts';
import { fuelPumpShare, mapMargin } from './gates-of.ts';
import type { LadderHeadroom } from './headroom.ts';
import { injectorDutyAt } from './injector-duty.ts';
import type { LadderLimits } from './limits.ts';
import type { Standing } from './standing.ts';

/** What ends the climb of boost. */
export const boostEnds = [
  'target',
  'boost-ceiling',
  'map-sensor',
  'injectors',
  'fuel-pump',
  'fluid',
  'intake',
  'predicted-knock',
  'measured-knock',
] as const;
export type BoostEnd = (typeof boostEnds)[number];

/** How far boost may be planned, and why no further. */
export type BoostCap = {
  readonly end: BoostEnd;
  /** Gauge [Pa]. */
  readonly boost: number;
};

/** Delivered over needed that still counts as fed (common practice: within 15 %). */
const fedFrom = 0.85;

/** Highest value up to `most` for which a claim holds that holds below and fails above; `from` where it never does. */
function highest(holds: (boost: number) => boolean, from: number, most: number): number {
  if (holds(most)) return most;
  if (!holds(from)) return from;
  let [low, high] = [from, most];
  for (let i = 0; i < 16; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

export type CapQuestion = {
  readonly setup: Setup;
  readonly plan: Plan;
  readonly model: ChargeModel;
  readonly limits: LadderLimits;
  readonly standing: Standing;
  readonly headroom: LadderHeadroom | null;
  /** Of the fuel's air demand where a loop cuts petrol for it, else 0. */
  readonly alcoholShare: number;
  /** Wanted in the end [Pa gauge]. */
  readonly target: number;
  /** Usual step [Pa]. */
  readonly boostStep: number;
};

/**
 * Every end of the climb, lowest first. The first one holds; the others tell what to raise if it were moved.
 *
 * Knock that was measured: half a step below it after one event, the boost before it after two (common practice).
 */
export function boostCaps(question: CapQuestion): readonly BoostCap[] {
  const { setup, plan, model, limits, standing, headroom, target } = question;
  const { ambientPressure } = model;
  const speed = plan.path.peakSpeed_rad_s;
  const most = Math.max(target, standing.boost);
  const caps: BoostCap[] = [{ end: 'target', boost: target }];
  if (limits.boostCeiling !== null) caps.push({ end: 'boost-ceiling', boost: limits.boostCeiling });
  const sensor = setup.engine.mapSensor_kPa === null ? null : setup.engine.mapSensor_kPa * 1e3 * mapMargin;
  const map = Math.min(sensor ?? Number.POSITIVE_INFINITY, limits.mapCeiling ?? Number.POSITIVE_INFINITY);
  if (Number.isFinite(map)) caps.push({ end: 'map-sensor', boost: map - ambientPressure });
  const duty = (boost: number) => injectorDutyAt(setup, plan, ambientPressure, boost, question.alcoholShare);
  if (duty(most) !== null)
    caps.push({
      end: 'injectors',
      boost: highest((b) => (duty(b) ?? 0) <= limits.injectorDuty, 0, 2 * most),
    });
  const pump = (boost: number) => fuelPumpAt(setup, plan, boost, question.alcoholShare);
  if (pump(most) !== null)
    caps.push({ end: 'fuel-pump', boost: highest((b) => (pump(b) ?? 0) <= fuelPumpShare, 0, 2 * most) });
  // Short of the target ratio but inside the window of practice is worth a remark, not an end.
  const lowest = setup.targets.ratioLow_percent / 100;
  const fed = (boost: number) => {
    const need = plan.need.at(speed, boost);
    const flow = deliveredAt(plan.context, plan.driven, speed, boost);
    if (need <= 0 || flow >= fedFrom * need) return true;
    return flow * plan.system.density >= lowest * plan.fuel.at(speed, boost);
  };
  // Scanned from below: between start and full point the feed may dip and come back.
  let fedTo = most;
  for (let boost = standing.boost; boost <= most + 1; boost += (most - standing.boost) / 20 || most)
    if (!fed(boost)) {
      fedTo = Math.max(0, boost - (most - standing.boost) / 20);
      break;
    }
  if (fedTo < most) caps.push({ end: 'fluid', boost: fedTo });
  const ceiling = limits.intake;
  if (ceiling !== null) {
    const hot = (boost: number) => {
      const along = chargeAlong(model.path(boost, speed, false));
      return along.ok && along.value.port.air.temperature >= ceiling;
    };
    const boost = highest((b) => !hot(b), 0, most);
    if (boost < most) caps.push({ end: 'intake', boost });
  }
  if (headroom) caps.push({ end: 'predicted-knock', boost: headroom.shownBoost + headroom.boost[1] });
  const { knock } = standing;
  if (knock && knock.kind === 'boost')
    caps.push({
      end: 'measured-knock',
      boost:
        knock.events >= 2
          ? Math.min(standing.boost, knock.boost - question.boostStep / 2)
          : knock.boost - question.boostStep / 2,
    });
  else if (knock) caps.push({ end: 'measured-knock', boost: Math.min(standing.boost, knock.boost) });
  return caps.sort((a, b) => a.boost - b.boost);
}
