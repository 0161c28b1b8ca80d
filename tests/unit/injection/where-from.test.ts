import { describe, expect, it } from 'vitest';
import { explainNozzleChoice, explainStrategy, midRangeCost, planOf } from '../../../core/injection/index.ts';
import { type Problem, unwrap } from '../../../core/result/index.ts';
import type { Explanation } from '../../../core/units/index.ts';
import { setupWith } from '../../support/setup.ts';

type Change = Parameters<typeof setupWith>[0];
const plan = (change: Change = {}) => unwrap(planOf(setupWith(change)));

const isWhole = (e: Explanation) =>
  e.formula.length > 3 && e.source.length > 10 && e.inputs.every((i) => Number.isFinite(i.value));

describe('every number of a plan', () => {
  const full = plan({
    targets: { start_kPa: 30, full_kPa: 90, strategy: 'by-hand' },
    fluidSystem: { line: { empty_m: 0.5 }, refills: [{ filled_L: 1, pulls: 40 }] },
    engine: { soundBoost_kPa: 70 },
  });

  it.each([
    'injection/fuel',
    'injection/need',
    'injection/rule-of-thumb',
    'delivery/nozzle-flow',
    'delivery/pressure-difference',
    'delivery/line-loss',
    'injection/arrival',
    'injection/later-start',
    'injection/full-beyond',
    'injection/by-hand',
    'injection/endurance',
    'injection/guard-band',
    'injection/guard-pressure',
    'injection/fallback',
    'injection/feed-map',
  ])('%s says where it comes from', (id) => {
    const found = full.explanations.find((e) => e.id === id);
    expect(found && isWhole(found), id).toBe(true);
  });

  it('of each choice of nozzles and of each strategy says it too', () => {
    for (const choice of full.choices)
      expect(isWhole(explainNozzleChoice(choice, full.need.fluid))).toBe(true);
    for (const strategy of full.strategies)
      for (const e of Object.values(explainStrategy(strategy, full.context))) expect(isWhole(e)).toBe(true);
    expect(full.endurance.refillExplanation && isWhole(full.endurance.refillExplanation)).toBe(true);
  });
});

describe('the cost of a later start', () => {
  it('is nothing for a matched nozzle and grows with oversize', () => {
    const cost = (flow_mL_min: number) => {
      const [later] = plan({
        fluidSystem: { nozzles: [{ name: 'one', flow_mL_min, count: 1 }] },
      }).strategies;
      return later ? (midRangeCost(later)?.shortfall ?? 0) : Number.NaN;
    };
    const matched = 170;
    expect(cost(matched)).toBe(0);
    expect(cost(1.5 * matched)).toBeGreaterThan(0.1);
    expect(cost(1.9 * matched)).toBeGreaterThan(cost(1.5 * matched));
  });
});

describe('two ways that miss the need alike', () => {
  it('are said to, with why one of them is taken', () => {
    const { recommended } = plan({ fluidSystem: { nozzles: [{ name: '175', flow_mL_min: 168, count: 1 }] } });
    expect(recommended.name).toBe('later-start');
    expect(recommended.reason.code).toBe('injection/recommended-tie');
  });

  it('are not called alike where one is nearer', () => {
    const { recommended } = plan({ fluidSystem: { nozzles: [{ name: 'one', flow_mL_min: 260, count: 1 }] } });
    expect(recommended.reason.code).not.toBe('injection/recommended-tie');
  });
});

describe('a fault names the field that it is mended in', () => {
  const fieldOf = (change: Change, code: Problem['code']) => {
    const result = planOf(setupWith(change));
    const found = result.ok ? undefined : result.problems.find((p) => p.code === code);
    return found?.where?.field;
  };

  it.each<[string, Change, Problem['code'], string]>([
    [
      'a share over 100 %',
      { fluidSystem: { mix: { methanol_percent: 120 } } },
      'fluids/shares-over-whole',
      'fluidSystem.mix.methanol_percent',
    ],
    [
      'two shares over 100 %, at the larger',
      { fluidSystem: { mix: { methanol_percent: 40, ethanol_percent: 80 } } },
      'fluids/shares-over-whole',
      'fluidSystem.mix.ethanol_percent',
    ],
    [
      'a negative share',
      { fluidSystem: { mix: { methanol_percent: 40, ethanol_percent: -1 } } },
      'fluids/share-negative',
      'fluidSystem.mix.ethanol_percent',
    ],
    [
      'a negative nozzle flow',
      { fluidSystem: { nozzles: [{ name: 'a', flow_mL_min: -5 }] } },
      'delivery/nozzle-flow-not-positive',
      'fluidSystem.nozzles',
    ],
    [
      'a negative pump flow',
      { fluidSystem: { pump: { openFlow_mL_min: -1 } } },
      'delivery/pump-number-negative',
      'fluidSystem.pump.openFlow_mL_min',
    ],
    [
      'a pump weaker than boost, by its regulator',
      { fluidSystem: { pump: { shutPressure_kPa: 90, setPressure_kPa: 80 } } },
      'delivery/pump-weaker-than-boost',
      'fluidSystem.pump.setPressure_kPa',
    ],
    [
      'a pump weaker than boost, by itself',
      { fluidSystem: { pump: { shutPressure_kPa: 90, control: 'none' } } },
      'delivery/pump-weaker-than-boost',
      'fluidSystem.pump.shutPressure_kPa',
    ],
    [
      'a start above the full point',
      { targets: { start_kPa: 80, full_kPa: 60 } },
      'injection/start-above-full',
      'targets.start_kPa',
    ],
    ['an empty nozzle list', { fluidSystem: { nozzles: [] } }, 'delivery/no-nozzle', 'fluidSystem.nozzles'],
    [
      'a ratio profile that turns back',
      {
        targets: {
          ratioProfile: [
            { boost_kPa: 80, ratio_percent: 5 },
            { boost_kPa: 50, ratio_percent: 10 },
          ],
        },
      },
      'injection/ratio-profile-falls-back',
      'targets.ratioProfile',
    ],
    [
      'a bucket point without an amount',
      { fluidSystem: { bucket: { points: [{ setting_percent: 100, time_s: 30 }] } } },
      'delivery/bucket-no-amount',
      'fluidSystem.bucket.points',
    ],
  ])('%s', (_, change, code, field) => {
    expect(fieldOf(change, code)).toBe(field);
  });
});
