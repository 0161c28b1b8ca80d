import { describe, expect, it } from 'vitest';
import { type Channel, channelOf } from '../../../core/log/index.ts';
import { pullWindow } from '../../../core/power/pull-window.ts';
import { isAfterFall, settledAt } from '../../../core/power/settled-start.ts';
import { drive } from '../../support/drive-generator.ts';

const one = drive({ seed: 4 });
const engine = channelOf(one.log, 'engineSpeed') as Channel;
const { from } = one.pull;

/** The drive with other engine speeds before its pull, as shares of that at its start; nearest first. */
function isTold(shares: readonly number[]) {
  const start = engine.values[from] as number;
  const channels = one.log.channels.map((c) =>
    c === engine
      ? { ...c, values: c.values.map((v, i) => (i < from ? start * (shares[from - 1 - i] ?? 1) : v)) }
      : // With the pedal down through the change its samples before the pull would serve the pull.
        c.quantity === 'pedal'
        ? { ...c, values: c.values.map((v, i) => (i < from ? 0 : v)) }
        : c,
  );
  const log = { ...one.log, channels };
  return isAfterFall(log, pullWindow(log, one.pull, channelOf(log, 'engineSpeed') as Channel));
}

describe('a pull that follows on a gear change', () => {
  it('is told by engine speed that fell into it', () => {
    const change = Array.from({ length: 20 }, (_, i) => 1 + 0.4 * Math.min(1, i / 8));
    expect(isTold(change)).toBe(true);
  });

  it('is not one from cruising, from a slight fall, nor one with spikes before it', () => {
    expect(isTold([])).toBe(false);
    expect(isTold(Array.from({ length: 20 }, (_, i) => 1 + 0.004 * i))).toBe(false);
    expect(isTold([1, 2, 1, 1, 2])).toBe(false);
  });

  it('is told from where its slope is known about as well as in the middle', () => {
    const time = Float64Array.from({ length: 40 }, (_, i) => 0.15 + 0.05 * i);
    const deviations = time.map((t) => 1 + 5 * Math.exp(-(t - 0.15) / 0.08));
    const slopeVariance = deviations.map((s) => s * s);
    const at = settledAt({ slopeVariance }, time, 0.4);
    expect(deviations[at] as number).toBeLessThanOrEqual(2.1);
    expect(deviations[at - 1] as number).toBeGreaterThan(2);
    expect(time[settledAt({ slopeVariance }, time, 0.25)] as number).toBeCloseTo(0.25, 9);
    expect(settledAt({ slopeVariance: slopeVariance.map(() => 1) }, time, 0.4)).toBe(0);
  });
});
