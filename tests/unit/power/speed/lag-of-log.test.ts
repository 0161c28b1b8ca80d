import { expect, it } from 'vitest';
import type { PullPower } from '../../../../core/power/index.ts';
import { lagOfLog } from '../../../../core/power/index.ts';
import type { Note } from '../../../../core/result/index.ts';

const bySlip: Note = { code: 'power/slip-from-speed', facts: { slip: 0.02 } };
const late = (lag: number): Note => ({ code: 'power/speed-late', facts: { lag } });
const power = (...notes: Note[]) => ({ notes }) as unknown as PullPower;

it('a log has the lag that most of its pulls show, whatever one with a spinning wheel says', () => {
  const found = lagOfLog([0.14, 0.16, 0.15, 0.6].map((lag) => power(bySlip, late(lag))));
  expect(found?.lag).toBeCloseTo(0.155, 6);
  expect(found?.error).toBeGreaterThan(0.02);
  expect(found?.error).toBeLessThan(0.03);
});

it('a lag too short to be said counts as none', () => {
  expect(lagOfLog([power(bySlip), power(bySlip), power(bySlip, late(0.06))])?.lag).toBe(0);
});

it('pulls that scatter leave the lag less sure', () => {
  const errorOf = (...lags: number[]) => lagOfLog(lags.map((lag) => power(bySlip, late(lag))))?.error ?? 0;
  expect(errorOf(0.06, 0.15, 0.3)).toBeGreaterThan(2 * errorOf(0.14, 0.15, 0.16));
});

it('two pulls, or pulls of one speed alone, tell nothing', () => {
  expect(lagOfLog([power(bySlip, late(0.2)), power(bySlip, late(0.2))])).toBeNull();
  expect(lagOfLog([power(late(0.2)), power(late(0.2)), power(late(0.2))])).toBeNull();
});
