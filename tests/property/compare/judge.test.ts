import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge, type PullEvidence } from '../../../core/compare/index.ts';
import { inventDay, quietDay } from '../../support/invented-session.ts';

const seeds = fc.integer({ min: 1, max: 1e6 });
const shares = fc.double({ min: -0.05, max: 0.05, noNaN: true });
const pullCounts = fc.integer({ min: 2, max: 4 });

function sides(seed: number, share: number, pulls: number) {
  const [before, after] = inventDay({
    ...quietDay,
    seed,
    entries: [
      { pulls, share: 0 },
      { pulls, share },
    ],
  }).map((e) => e.pulls) as [PullEvidence[], PullEvidence[]];
  return { before, after };
}

const times = (pulls: readonly PullEvidence[], factor: number) =>
  pulls.map((p) => ({
    ...p,
    power: {
      ...p.power,
      wheelPower: p.power.wheelPower.map((v) => v * factor),
      wheelPowerError: p.power.wheelPowerError.map((v) => v * factor),
    },
  }));

const runs = { numRuns: 25 };

describe('whatever the pulls', () => {
  it('a car of twice the power shows twice the watts and the same shares', () => {
    fc.assert(
      fc.property(seeds, shares, pullCounts, (seed, share, pulls) => {
        const { before, after } = sides(seed, share, pulls);
        const one = judge({ before, after, declared: null });
        const two = judge({ before: times(before, 2), after: times(after, 2), declared: null });
        expect(two.kind).toBe(one.kind);
        expect(two.effectShare ?? 0).toBeCloseTo(one.effectShare ?? 0, 6);
        expect((two.effect ?? 0) / 2).toBeCloseTo(one.effect ?? 0, 2);
      }),
      runs,
    );
  });

  it('the order in which pulls are handed over does not matter', () => {
    fc.assert(
      fc.property(seeds, shares, pullCounts, (seed, share, pulls) => {
        const { before, after } = sides(seed, share, pulls);
        const there = judge({ before, after, declared: null });
        const back = judge({ before: [...before].reverse(), after: [...after].reverse(), declared: null });
        expect(back.kind).toBe(there.kind);
        expect(back.effect ?? 0).toBeCloseTo(there.effect ?? 0, 3);
        expect(back.interval95?.[0] ?? 0).toBeCloseTo(there.interval95?.[0] ?? 0, 1);
      }),
      runs,
    );
  });

  it('the effect lies inside its interval, the curve inside its band, and a decided verdict asks for no pulls', () => {
    fc.assert(
      fc.property(seeds, shares, pullCounts, (seed, share, pulls) => {
        const verdict = judge({ ...sides(seed, share, pulls), declared: null });
        if (verdict.kind === 'not-comparable') return;
        const [low, high] = verdict.interval95 as [number, number];
        expect(low).toBeLessThan(verdict.effect as number);
        expect(high).toBeGreaterThan(verdict.effect as number);
        verdict.curve?.delta.forEach((d, k) => {
          expect(verdict.curve?.low[k]).toBeLessThan(d);
          expect(verdict.curve?.high[k]).toBeGreaterThan(d);
        });
        if (verdict.kind !== 'undecided') expect(verdict.morePulls).toBeNull();
        if (verdict.kind === 'gain') expect(low).toBeGreaterThan(0);
        if (verdict.kind === 'loss') expect(high).toBeLessThan(0);
      }),
      runs,
    );
  });

  it('a wider margin never turns equivalent into something else', () => {
    fc.assert(
      fc.property(seeds, pullCounts, (seed, pulls) => {
        const given = { ...sides(seed, 0, pulls), declared: null };
        if (judge({ ...given, margin: 0.01 }).kind !== 'equivalent') return;
        expect(judge({ ...given, margin: 0.02 }).kind).toBe('equivalent');
      }),
      runs,
    );
  });
});
