import fc from 'fast-check';
import { expect, it } from 'vitest';
import { airDemand, blendOf, type Mix, mixByMass, petrolBlend } from '../../../core/fluids/index.ts';
import {
  bestPowerLambda,
  blendDemand,
  fluidFromTrim,
  mixturePlan,
  practiceFullFeed,
  textbookBestPower,
} from '../../../core/mixture/index.ts';
import { unwrap } from '../../../core/result/index.ts';

// Whole steps: a spray of 1e-300 g/s is nothing to measure.
const share = fc.integer({ min: 0, max: 100 }).map((n) => n / 100);
const anyMix: fc.Arbitrary<Mix> = fc
  .tuple(share, share)
  .map(([a, b]) => unwrap(mixByMass({ methanol: a * b, ethanol: a * (1 - b) })));
const state = fc.record({
  petrol: fc.double({ min: 0, max: 0.85, noNaN: true }).map((e) => unwrap(petrolBlend(e))),
  mix: anyMix,
  airFlow: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
  fluidFlow: fc.integer({ min: 1, max: 60 }).map((n) => n * 1e-4),
  lambda: fc.double({ min: 0.7, max: 1, noNaN: true }),
});

it('everything that burns takes exactly the air over lambda', () => {
  fc.assert(
    fc.property(state, (s) => {
      const demand = blendDemand(s);
      fc.pre(demand.ok);
      const { petrolFlow } = unwrap(demand);
      const { petrol, ethanol } = s.petrol.parts;
      const burnt = blendOf(
        { petrol: petrol * petrolFlow, ethanol: ethanol * petrolFlow },
        s.mix,
        s.fluidFlow,
      );
      expect(airDemand(burnt)).toBeCloseTo(s.airFlow / s.lambda, 9);
    }),
    { seed: 21 },
  );
});

it('more fluid never asks for more petrol, and a trim made by a fluid flow gives that flow back', () => {
  fc.assert(
    fc.property(state, (s) => {
      const [none, some] = [blendDemand({ ...s, fluidFlow: 0 }), blendDemand(s)];
      const share = some.ok ? some.value.alcoholShare : 1;
      fc.pre(none.ok && share > 1e-4 && share < 0.8);
      const [before, after] = [unwrap(none).petrolFlow, unwrap(some).petrolFlow];
      expect(after).toBeLessThanOrEqual(before);
      const found = unwrap(
        fluidFromTrim({
          mix: s.mix,
          petrolAirFuel: s.petrol.stoichiometricAirFuel,
          petrolFlow: { value: before, half: 0 },
          change: { value: after / before - 1, half: 0.001 },
          lambdaRatio: { value: 1, half: 0 },
          airRatio: { value: 1, half: 0 },
          planned: null,
        }),
      );
      expect(found.fluidFlow / s.fluidFlow).toBeCloseTo(1, 6);
    }),
    { seed: 22 },
  );
});

it('best power of a blend lies between its parts', () => {
  fc.assert(
    fc.property(share, share, (a, b) => {
      const shares = { petrol: 1 - a, methanol: a * b, ethanol: a * (1 - b) };
      const [low, high] = bestPowerLambda(shares);
      const parts = Object.values(textbookBestPower);
      expect(low).toBeGreaterThanOrEqual(Math.min(...parts.map((p) => p[0])) - 1e-12);
      expect(high).toBeLessThanOrEqual(Math.max(...parts.map((p) => p[1])) + 1e-12);
      expect(low).toBeLessThan(high);
    }),
    { seed: 23 },
  );
});

it('the target grows steadily with the feed: not at all without fluid, no jump, in full from the full feed on', () => {
  const setup = fc.record({
    mix: anyMix,
    airFlow: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
    // Rich enough that there is something to win back.
    lambda: fc.double({ min: 0.7, max: 0.83, noNaN: true }),
    feed: fc.double({ min: 0, max: 0.3, noNaN: true }),
    more: fc.double({ min: 0, max: 0.02, noNaN: true }),
  });
  fc.assert(
    fc.property(setup, ({ mix, airFlow, lambda, feed, more }) => {
      const petrol = unwrap(petrolBlend(0.05));
      const petrolFlow = airFlow / lambda / petrol.stoichiometricAirFuel;
      const points = [0, feed, feed + more].map((r) => ({
        boost: 1e5,
        engineSpeed_rad_s: 500,
        airFlow,
        fluidFlow: r * petrolFlow,
      }));
      const plan = mixturePlan({ petrol, mix, fuelling: 'closed-loop', lambda, leanest: 0.9, points });
      const [none = 0, some = 0, next = 0] = unwrap(plan).rows.map((r) => r.shift);
      expect(none).toBe(0);
      // The whole way is under 0.16 of lambda over the full feed; best power of a blend adds its own slope.
      expect(Math.abs(next - some)).toBeLessThanOrEqual((0.16 / practiceFullFeed + 0.1) * more + 1e-12);
      if (feed + more <= practiceFullFeed) expect(next).toBeGreaterThanOrEqual(some - 1e-12);
      if (feed > 0.01) expect(some).toBeGreaterThan(0);
    }),
    { seed: 24 },
  );
});
