import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullBeyond, laterStart, planOf, settablePoints } from '../../../core/injection/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { setupWith } from '../../support/setup.ts';

const feed = fc.double({ min: 0.4, max: 4, noNaN: true });
const peak = fc.double({ min: 20e3, max: 250e3, noNaN: true });
const matched = fc.double({ min: 0.2, max: 0.7, noNaN: true });
const metering = fc.constantFrom('on-off' as const, 'pump-speed' as const, 'valve-duty' as const);

it('a larger nozzle never has to start earlier', () => {
  fc.assert(
    fc.property(feed, peak, matched, metering, (r, p, m, by) => {
      expect(laterStart(r * 1.05, p, m, by).start).toBeGreaterThanOrEqual(laterStart(r, p, m, by).start);
      expect(fullBeyond(r * 1.05, p, m).full).toBeGreaterThanOrEqual(fullBeyond(r, p, m).full);
    }),
  );
});

it('start stays below full and inside the boost there is', () => {
  fc.assert(
    fc.property(feed, peak, matched, metering, (r, p, m, by) => {
      for (const points of [laterStart(r, p, m, by), fullBeyond(r, p, m)]) {
        expect(points.start).toBeGreaterThan(0);
        expect(points.start).toBeLessThan(p);
        expect(points.full).toBeGreaterThan(points.start);
      }
    }),
  );
});

it('what the controller takes lies within a step of what was asked', () => {
  const step = fc.double({ min: 500, max: 10e3, noNaN: true });
  fc.assert(
    fc.property(peak, step, (p, s) => {
      const asked = { start: 0.4 * p, full: p };
      const set = settablePoints(asked, { step: s, highestStart: null, highestFull: null });
      expect(Math.abs(set.start - asked.start)).toBeLessThanOrEqual(s);
      expect(Math.abs(set.full - asked.full)).toBeLessThanOrEqual(s);
      expect(set.full).toBeGreaterThan(set.start);
    }),
  );
});

describe('a plan', () => {
  const runs = { numRuns: 25 };
  const planWith = (change: Parameters<typeof setupWith>[0]) => unwrap(planOf(setupWith(change)));

  it('needs more fluid for more power, more boost by air, a higher ratio', () => {
    fc.assert(
      fc.property(fc.double({ min: 80, max: 500, noNaN: true }), (peakPower_kW) => {
        const need = (change: Parameters<typeof setupWith>[0]) => planWith(change).need.fluid;
        const base = need({ engine: { peakPower_kW } });
        expect(need({ engine: { peakPower_kW: peakPower_kW * 1.1 } })).toBeGreaterThan(base);
        expect(need({ engine: { peakPower_kW }, targets: { fluidRatio_percent: 16 } })).toBeGreaterThan(base);
        const byAir = (peakBoost_kPa: number) =>
          need({ engine: { peakBoost_kPa }, targets: { fuelFrom: 'air' } });
        expect(byAir(120)).toBeGreaterThan(byAir(100));
      }),
      runs,
    );
  });

  it('delivers nothing below its start, and never less for a larger nozzle at full setting', () => {
    fc.assert(
      fc.property(fc.double({ min: 90, max: 500, noNaN: true }), metering, (flow_mL_min, by) => {
        const made = (flow: number) =>
          planWith({
            fluidSystem: { metering: by, nozzles: [{ name: 'a', flow_mL_min: flow, count: 1 }] },
          });
        const p = made(flow_mL_min);
        expect(made(flow_mL_min * 1.1).nozzle.flow).toBeGreaterThan(p.nozzle.flow);
        for (const s of p.strategies)
          for (const [i, boost] of s.overBoost.boost.entries())
            if (boost < s.start - 1) expect(s.overBoost.delivered[i]).toBe(0);
      }),
      runs,
    );
  });

  it('accounts for every drop: the pull’s fluid is the mean flow times its time', () => {
    fc.assert(
      fc.property(fc.double({ min: 4, max: 20, noNaN: true }), (pullDuration_s) => {
        const one = planWith({ engine: { pullDuration_s } }).endurance.perPull;
        const two = planWith({ engine: { pullDuration_s: 2 * pullDuration_s } }).endurance.perPull;
        expect(two / one).toBeCloseTo(2, 9);
      }),
      runs,
    );
  });

  it('regions cover the curve from end to end without a gap', () => {
    fc.assert(
      fc.property(fc.double({ min: 90, max: 500, noNaN: true }), (flow_mL_min) => {
        const p = planWith({ fluidSystem: { nozzles: [{ name: 'a', flow_mL_min }] } });
        for (const s of p.strategies) {
          expect(s.boostRegions[0]?.from).toBe(0);
          expect(s.boostRegions.at(-1)?.to).toBe(s.overBoost.boost.length - 1);
          for (let i = 1; i < s.boostRegions.length; i++)
            expect(s.boostRegions[i]?.from).toBe((s.boostRegions[i - 1]?.to ?? 0) + 1);
        }
      }),
      runs,
    );
  });
});
