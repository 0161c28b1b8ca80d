import { describe, expect, it } from 'vitest';
import { powerOfPull, wheelPowerHalf } from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import { drive, interpolate } from '../../../support/drive-generator.ts';

/** A drive whose clutch lets the engine run ahead by `slip` of the road, over the share of the pull that is driven. */
function slipping(seed: number, slip: (share: number) => number) {
  const d = drive({ seed });
  const [start, end] = [d.pull.start_s, d.pull.end_s];
  const channels = d.log.channels.map((c) =>
    c.quantity === 'engineSpeed'
      ? {
          ...c,
          values: c.values.map((w, i) => w * (1 + slip(((d.log.time[i] as number) - start) / (end - start)))),
        }
      : c,
  );
  return { ...d, log: { ...d.log, channels } };
}

/** Wheel power against what drove the car at each instant, by Newton's second law in the generator. */
function against(d: ReturnType<typeof slipping>, flags = d.pull.flags) {
  const found = unwrap(powerOfPull(d.log, { ...d.pull, flags }, d.car, d.conditions));
  const half = wheelPowerHalf(found);
  const off = [...found.time].map(
    (t, i) => (found.wheelPower[i] as number) - interpolate(d.truth.time, d.truth.wheelPower, t),
  );
  return {
    held: off.filter((x, i) => Math.abs(x) <= (half[i] as number)).length / off.length,
    worst: Math.max(...off.map((x, i) => Math.abs(x / (found.wheelPower[i] as number)))),
    notes: found.notes,
  };
}

const seeds = [1, 2, 3, 4, 5];

describe('engine speed that runs ahead of the road', () => {
  it.each([
    ['more and more', (share: number) => 0.08 * Math.max(0, share - 0.4)],
    ['by a step', (share: number) => (share > 0.55 ? 0.05 : 0)],
  ])('%s leaves wheel power to road speed', (_, slip) => {
    for (const seed of seeds) {
      const { held, notes } = against(slipping(seed, slip));
      expect(held).toBeGreaterThan(0.93);
      const note = notes.find((n) => n.code === 'power/engine-ahead-of-road');
      expect(note?.facts).toMatchObject({ excess: expect.any(Number) });
      expect(notes.map((n) => n.code)).not.toContain('power/speed-late');
    }
  });

  it('for a while in the middle does so where the pull was seen to slip', () => {
    for (const seed of seeds) {
      const d = slipping(
        seed,
        (share) => 0.08 * Math.max(0, Math.sin(3 * Math.PI * (share - 0.3))) * (share < 0.64 ? 1 : 0),
      );
      const flag = { code: 'log/pull-wheel-spin', facts: { time_s: 1, excess: 0.08 } } as const;
      const { held, worst } = against(d, [flag]);
      expect(held).toBeGreaterThan(0.93);
      expect(worst).toBeLessThan(against(d).worst);
    }
  });

  it('by no more than tyres slip is joined with the road as ever', () => {
    for (const seed of seeds) {
      const codes = against(slipping(seed, () => 0)).notes.map((n) => n.code);
      expect(codes).not.toContain('power/engine-ahead-of-road');
      expect(codes).toContain('power/slip-from-speed');
    }
  });
});
