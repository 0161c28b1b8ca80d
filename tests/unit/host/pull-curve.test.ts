import { expect, test } from 'vitest';
import type { AnalysedPull } from '../../../core/session/index.ts';
import { pullCurve, samplesOfCurve } from '../../../electron/host/pull-curve.ts';

const pullOf = (wheelPower: readonly number[]) =>
  ({
    id: 'p',
    runId: 'r',
    power: {
      engineSpeed_rad_s: Float64Array.from(wheelPower, (_, i) => 200 + i),
      wheelPower: Float64Array.from(wheelPower),
    },
  }) as unknown as AnalysedPull;

test('few pulls bring every sample; hundreds bring fewer each, never so few that the shape goes', () => {
  expect(samplesOfCurve(0)).toBe(20_000);
  expect(samplesOfCurve(24)).toBeGreaterThan(800);
  expect(samplesOfCurve(319)).toBe(62);
  expect(samplesOfCurve(10_000)).toBe(60);
});

test('a thinned curve keeps its peak and its dip, each at its own engine speed', () => {
  const power = Array.from({ length: 1000 }, (_, i) => 1e5 + (i === 617 ? 5e4 : i === 203 ? -5e4 : i));
  const curve = pullCurve(pullOf(power), 60);
  expect(curve?.wheelPower.length).toBeLessThanOrEqual(60);
  expect(curve?.wheelPower.length).toBe(curve?.engineSpeed_rad_s.length);
  expect(curve?.engineSpeed_rad_s[curve.wheelPower.indexOf(1.5e5)]).toBe(817);
  expect(curve?.engineSpeed_rad_s[curve.wheelPower.indexOf(5e4)]).toBe(403);
});

test('a gap stays a gap, and a pull without power has no curve', () => {
  expect(pullCurve(pullOf([1, Number.NaN, 3]), 60)?.wheelPower).toEqual([1, null, 3]);
  expect(pullCurve({ id: 'p', runId: 'r', power: null } as unknown as AnalysedPull, 60)).toBeNull();
});
