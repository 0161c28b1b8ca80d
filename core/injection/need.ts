import { fail, type Note, ok, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import type { FuelModel } from './engine-fuel.ts';
import { interpolate } from './interpolate.ts';
import { practice } from './practice.ts';
import type { PullPath } from './pull-path.ts';
import type { Setup } from './setup.ts';

/** Target fluid over fuel by mass, over boost. */
export type RatioProfile = {
  readonly boost: readonly number[];
  readonly ratio: readonly number[];
  readonly isPractice: boolean;
};

/**
 * Fluid over fuel as the user set it over boost, or as practice has it: nothing up to the start of a matched
 * nozzle, then rising evenly to the target at peak boost. A known knock limit brings the foot below it.
 *
 * Errors: injection/ratio-profile-falls-back where boost does not rise from point to point.
 */
export function ratioProfile(setup: Setup, peakBoost: number): Result<RatioProfile> {
  const { targets, engine } = setup;
  if (targets.ratioProfile.length > 0) {
    const boost = targets.ratioProfile.map((p) => p.boost_kPa * 1e3);
    for (let i = 1; i < boost.length; i++) {
      const [previous = 0, now = 0] = [boost[i - 1], boost[i]];
      if (now <= previous)
        return fail({
          code: 'injection/ratio-profile-falls-back',
          facts: { boost: now, previous },
          where: { field: 'targets.ratioProfile' },
        });
    }
    return ok({ boost, ratio: targets.ratioProfile.map((p) => p.ratio_percent / 100), isPractice: false });
  }
  let foot = (targets.matchedStart_percent / 100) * peakBoost;
  if (engine.knockLimitedBoost_kPa !== null)
    foot = Math.min(foot, Math.max(0, engine.knockLimitedBoost_kPa * 1e3 - practice.knockMargin));
  return ok({ boost: [foot, peakBoost], ratio: [0, targets.fluidRatio_percent / 100], isPractice: true });
}

/**
 * Volume by the rule of thumb beside the need [m^3/s]: 175 mL/min at 250 hp, in proportion.
 *
 * Source: common practice.
 */
export function ruleOfThumb(power: number): number {
  return practice.fluidPerPower * power;
}

/** Where the volume by the rule of thumb comes from. */
export function explainRuleOfThumb(power: number): Explanation {
  return {
    id: 'injection/rule-of-thumb',
    formula: 'q = 175 mL/min P / 250 hp',
    tex: String.raw`q = 175\,\mathrm{mL/min}\;\frac{P}{250\,\mathrm{hp}}`,
    inputs: [{ symbol: 'P', value: power, kind: 'power' }],
    source: 'common practice, no source; near 0.335 kg/kWh, 15 % by mass of a mix of 0.93 kg/L',
    validRange: [],
  };
}

export type Need = {
  /** At peak boost and the engine speed of peak power. */
  readonly fuel: number;
  readonly fluidMass: number;
  /** [m^3/s] */
  readonly fluid: number;
  readonly ratio: number;
  readonly profile: RatioProfile;
  /** [m^3/s] at engine speed [rad/s] and boost [Pa gauge]. */
  readonly at: (engineSpeed_rad_s: number, boost: number) => number;
  /** Null where no power is known to apply the rule to. */
  readonly ruleOfThumb: number | null;
  readonly ruleExplanation: Explanation | null;
  readonly notes: readonly Note[];
  readonly explanation: Explanation;
};

/**
 * Fluid that the engine needs.
 *
 *   q = ratio(boost) m_fuel(n, boost) / rho
 *
 * @param density  of the fluid [kg/m^3]
 *
 * Valid:  ratio 10 to 25 % by mass (common practice).
 * Check:  250 hp at 0.335 kg/kWh and 15 % of half and half methanol need 168 mL/min, 4 % under the rule.
 */
export function needOf(
  setup: Setup,
  path: PullPath,
  fuel: FuelModel,
  profile: RatioProfile,
  density: number,
): Need {
  const at = (n: number, boost: number) =>
    (interpolate(profile.boost, profile.ratio, boost) * fuel.at(n, boost)) / density;
  const fuelFlow = fuel.at(path.peakSpeed_rad_s, path.peakBoost);
  const ratio = interpolate(profile.boost, profile.ratio, path.peakBoost);
  const fluid = at(path.peakSpeed_rad_s, path.peakBoost);
  const notes: Note[] = [];
  const [low, high] = [setup.targets.ratioLow_percent / 100, setup.targets.ratioHigh_percent / 100];
  if (ratio < practice.hardlySeen) notes.push({ code: 'injection/ratio-hardly-seen', facts: { ratio } });
  else if (ratio > practice.quenches) notes.push({ code: 'injection/ratio-quenches', facts: { ratio } });
  else if (ratio < low || ratio > high)
    notes.push({ code: 'injection/ratio-outside-window', facts: { ratio, low, high } });
  const power =
    setup.engine.peakPower_kW === null
      ? setup.engine.powerCurve.reduce((most, p) => Math.max(most, p.power_kW), 0) * 1e3
      : setup.engine.peakPower_kW * 1e3;
  const rule = power > 0 ? ruleOfThumb(power) : null;
  if (rule !== null)
    notes.push({
      code: 'injection/rule-of-thumb',
      facts: { rule, need: fluid, difference: fluid / rule - 1 },
    });
  return {
    fuel: fuelFlow,
    fluidMass: fluid * density,
    fluid,
    ratio,
    profile,
    at,
    ruleOfThumb: rule,
    ruleExplanation: rule === null ? null : explainRuleOfThumb(power),
    notes,
    explanation: {
      id: 'injection/need',
      formula: 'q = ratio m_fuel / rho',
      tex: String.raw`q = \frac{r\,\dot m_\mathrm{fuel}}{\rho}`,
      inputs: [
        { symbol: 'ratio', value: ratio, kind: 'share' },
        { symbol: 'm_fuel', value: fuelFlow, kind: 'massFlow' },
        { symbol: 'rho', value: density, kind: 'density' },
      ],
      source: 'ratio: common practice; fuel: as the plan has it',
      validRange: [{ symbol: 'ratio', from: low, to: high, kind: 'share' }],
    },
  };
}
