import { describe, expect, it } from 'vitest';
import { planOf } from '../../../core/injection/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { convert, toSi } from '../../../core/units/index.ts';
import { checkValue } from '../../support/check-values.ts';
import { setupWith } from '../../support/setup.ts';

/**
 * What practice has, out of the model. Status of every value here: common practice, no source.
 */

/** A rated flow that makes `feed` times the need of the invented car, at its real pressure difference. */
function nozzleFor(feed: number, change: Parameters<typeof setupWith>[0] = {}) {
  const sized = (flow_mL_min: number) => {
    const nozzles = [{ name: 'made to measure', flow_mL_min, count: 1 }];
    return setupWith({ ...change, fluidSystem: { ...change.fluidSystem, nozzles } });
  };
  const hundred = unwrap(planOf(sized(100))).nozzle.feed;
  return sized((100 * feed) / hundred);
}
const share = checkValue('practice-start-share-of-peak-boost-matched-nozzle').expected as number;
const [least = 0, most = 0] = checkValue('practice-start-share-of-peak-boost-clearly-oversi')
  .expected as number[];

/** The strategy of a plan by name. */
function strategy(setup: ReturnType<typeof setupWith>, name: 'later-start' | 'full-beyond') {
  const found = unwrap(planOf(setup)).strategies.find((s) => s.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

describe('start and full point (common practice)', () => {
  it('a matched nozzle starts at 40 % of peak boost and is full at peak: 1.0 bar starts at 0.40', () => {
    const { start, full } = strategy(nozzleFor(1), 'later-start');
    // 0.3 % of peak: the nozzle was fitted to the need through a pump that droops a little with flow.
    expect(Math.abs(start / 1e3 - share)).toBeLessThan(0.3);
    expect(full).toBeCloseTo(100e3, 6);
  });

  it('14.5 psi starts at 5.8 psi', () => {
    const peakBoost_kPa = convert(14.5, 'psi', 'kPa');
    const setup = nozzleFor(1, { engine: { peakBoost_kPa } });
    expect(convert(strategy(setup, 'later-start').start, 'Pa', 'psi')).toBeCloseTo(5.8, 1);
  });

  it.each([1.5, 1.6, 1.7])('%d times oversize starts at 60 to 65 % of peak boost', (feed) => {
    const { start } = strategy(nozzleFor(feed), 'later-start');
    expect(start / 1e3).toBeGreaterThan(least - 0.3);
    expect(start / 1e3).toBeLessThan(most + 0.3);
  });

  it('a later start brings the mean fluid of a matched nozzle', () => {
    const mean = (feed: number) => {
      const { delivered } = strategy(nozzleFor(feed), 'later-start').overBoost;
      return delivered.reduce((a, b) => a + b, 0) / delivered.length;
    };
    // 4 %: the nozzle loses a little as boost rises, so a ramp that sits higher is a little flatter.
    expect(Math.abs(mean(1.6) / mean(1) - 1)).toBeLessThan(0.04);
  });

  it('the full point beyond peak makes peak flow the need: start 0.40, r 1.5, full at 1.30 bar', () => {
    const { start, full, peakFeed } = strategy(nozzleFor(1.5), 'full-beyond');
    expect(start / 1e3).toBeCloseTo(40, 6);
    expect(Math.abs(full / 1e3 - 130)).toBeLessThan(0.5);
    expect(peakFeed).toBeCloseTo(1, 3);
  });
});

describe('how much fluid (common practice)', () => {
  it('the rule of 175 mL/min at 250 hp and the need at 15 % by mass lie within 20 % of each other', () => {
    const { need } = unwrap(planOf(setupWith()));
    const rule = need.ruleOfThumb ?? Number.NaN;
    expect(convert(rule, 'm3/s', 'mL/min')).toBeCloseTo(
      checkValue('practice-fluid-at-250-hp').expected as number,
      6,
    );
    expect(Math.abs(need.fluid / rule - 1)).toBeLessThan(0.2);
  });

  it('250 hp at 0.335 kg/kWh burns 1.04 kg/min; 15 % is 156 g/min, about 170 mL/min', () => {
    const { need } = unwrap(planOf(setupWith()));
    expect(need.fuel * 60).toBeCloseTo(1.04, 2);
    expect(need.fluidMass * 60e3).toBeCloseTo(156, 0);
    expect(convert(need.fluid, 'm3/s', 'mL/min')).toBeGreaterThan(165);
    expect(convert(need.fluid, 'm3/s', 'mL/min')).toBeLessThan(175);
  });

  it('by swallowed air and by injector duty the same engine burns about the same within 12 %', () => {
    const byPower = unwrap(planOf(setupWith())).need.fuel;
    // 2.0 L at 6,000 rpm and 1 bar of boost, 0.95, 45 C, lambda 0.82: what 250 hp asks for.
    const byAir = unwrap(planOf(setupWith({ targets: { fuelFrom: 'air' } }))).need.fuel;
    // Four of 440 mL/min at 80 %: 1.05 kg/min.
    const injectors = {
      count: 4,
      flow_mL_min: 440,
      duty: [
        { engineSpeed_rpm: 3500, duty_percent: 46 },
        { engineSpeed_rpm: 6000, duty_percent: 80 },
        { engineSpeed_rpm: 6500, duty_percent: 80 },
      ],
    };
    const byDuty = unwrap(planOf(setupWith({ engine: { injectors } }))).need.fuel;
    expect(Math.abs(byAir / byPower - 1)).toBeLessThan(0.12);
    expect(Math.abs(byDuty / byPower - 1)).toBeLessThan(0.12);
  });

  it('a pull from 2,500 to 6,500 rpm uses 15 to 35 mL', () => {
    const perPull = unwrap(planOf(setupWith())).endurance.perPull * 1e6;
    expect(perPull).toBeGreaterThan(15);
    expect(perPull).toBeLessThan(35);
  });

  it('a rule in other units is the same rule: 0.7 mL/min for each hp', () => {
    const { need } = unwrap(planOf(setupWith({ engine: { peakPower_kW: convert(400, 'hp', 'kW') } })));
    expect((need.ruleOfThumb ?? 0) / toSi(280, 'mL/min')).toBeCloseTo(1, 9);
  });
});
