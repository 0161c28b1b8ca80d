import { describe, expect, it } from 'vitest';
import { fitDay } from '../../../core/compare/levels/day-fit.ts';
import {
  driftSuspect,
  intakeBelongsToChange,
  orderOf,
  readingSuspect,
  settlingSuspect,
  waysOf,
} from '../../../core/compare/levels/nuisances.ts';
import { intervalOf } from '../../../core/compare/statistics/index.ts';
import { inventDay, quietDay } from '../../support/invented-session.ts';

/** Levels of entries driven one after the other, with a slope from pull to pull and small fixed scatter. */
function dayOf(entries: number, each: number, slope: number, again = false) {
  const scatter = [0.004, -0.003, -0.004, 0.005, -0.002];
  const groups = entries + (again ? 1 : 0);
  const order = Float64Array.from({ length: groups * each }, (_, i) => i);
  const setupOf = Int32Array.from(order, (i) => Math.floor(i / each) % entries);
  const levels = order.map((i) => 0.01 * (setupOf[i] as number) + slope * i + (scatter[i % 5] as number));
  const pulls = inventDay({
    ...quietDay,
    entries: Array.from({ length: groups }, () => ({ pulls: each, share: 0 })),
  }).flatMap((e) => e.pulls);
  const drift = driftSuspect(pulls);
  if (!drift) throw new Error('the invented day has no order');
  return { levels, setupOf, setups: entries, prior: null, varianceFloor: 0, order, suspects: { drift } };
}

function halfOf(day: ReturnType<typeof dayOf>): number {
  const fit = fitDay(day);
  const weights = Array.from({ length: day.setups }, (_, i) => (i === 1 ? 1 : i === 0 ? -1 : 0));
  const [low, high] = intervalOf(fit?.combine(weights).stories ?? []);
  return (high - low) / 2;
}

describe('what may have moved power between pulls', () => {
  it('a day may drift and may be calm; neither is ruled out before looking', () => {
    const pulls = inventDay(quietDay).flatMap((e) => e.pulls);
    const { strengths = [] } = driftSuspect(pulls) ?? {};
    expect(strengths).toHaveLength(2);
    expect(strengths.reduce((sum, s) => sum + s.chance, 0)).toBeCloseTo(1, 12);
  });

  it('the first pulls of a session settle, those long after do not', () => {
    const pulls = inventDay(quietDay).flatMap((e) => e.pulls);
    const { values } = settlingSuspect(pulls) ?? {};
    expect(values?.[0]).toBe(1);
    expect(values?.[3]).toBeCloseTo(8 / 27, 12);
    expect(settlingSuspect(pulls.map((p) => ({ ...p, order: p.order + 20 })))).toBeNull();
  });

  it('no order of driving, no drift to look for', () => {
    const pulls = inventDay(quietDay).flatMap((e) => e.pulls.map((p) => ({ ...p, order: 0 })));
    expect(driftSuspect(pulls)).toBeNull();
    expect(settlingSuspect(pulls)).toBeNull();
    expect(orderOf(pulls)).toBeNull();
  });

  it('five entries are judged more sharply than two, and the baseline driven again sharpens them further', () => {
    const two = halfOf(dayOf(2, 4, 0));
    const five = halfOf(dayOf(5, 4, 0));
    const again = halfOf(dayOf(5, 4, 0, true));
    expect(five).toBeLessThan(two);
    expect(again).toBeLessThan(five);
  });

  it('a day that drifts is found out by the order of pulls, and its drift taken off the difference', () => {
    const drifting = fitDay(dayOf(5, 5, 0.003));
    expect(drifting?.suspect('drift')?.coefficient).toBeGreaterThan(0.002);
    expect(drifting?.combine([-1, 1, 0, 0, 0]).corrections.drift).toBeLessThan(-0.008);
    const steady = fitDay(dayOf(5, 5, 0));
    expect(Math.abs(steady?.combine([-1, 1, 0, 0, 0]).corrections.drift ?? 1)).toBeLessThan(0.003);
  });

  it('one pull a side tells no repeatability, whatever is thought of it before', () => {
    expect(fitDay(dayOf(2, 1, 0))).toBeNull();
  });

  it('intake temperature belongs to a change that warms or cools the charge', () => {
    expect(intakeBelongsToChange('boost')).toBe(true);
    expect(intakeBelongsToChange('spray')).toBe(true);
    expect(intakeBelongsToChange('spark')).toBe(false);
    expect(intakeBelongsToChange('mixture')).toBe(false);
  });

  it('a pull without a reading says nothing of it; a side without any takes the suspect away', () => {
    const setupOf = Int32Array.from([0, 0, 1, 1]);
    const one = readingSuspect('intake', Float64Array.from([300, Number.NaN, 304, 306]), setupOf, [0, 1]);
    expect([...(one?.values ?? [])]).toEqual([300, 300, 304, 306]);
    const none = Float64Array.from([300, 301, Number.NaN, Number.NaN]);
    expect(readingSuspect('intake', none, setupOf, [0, 1])).toBeNull();
    expect(readingSuspect('intake', none, setupOf, [0])).not.toBeNull();
  });

  it('out and back are told by heading, and a bend is neither', () => {
    const [pull] = inventDay(quietDay).flatMap((e) => e.pulls);
    if (!pull) throw new Error('the invented day has no pull');
    const toward = (heading_rad: number) => ({ ...pull, heading_rad });
    expect([...waysOf([toward(0.1), toward(0.1 + Math.PI), toward(0.1 + Math.PI / 2)])]).toEqual([1, -1, 0]);
  });
});
