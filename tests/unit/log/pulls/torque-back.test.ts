import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { torqueBack } from '../../../../core/log/pulls/torque-back.ts';
import { unwrap } from '../../../../core/result/index.ts';
import { createRandom } from '../../../support/log-generator/random.ts';

/** Engine speed [rad/s] that has met the new gear at 0 s and stands for `cut_s` before it climbs. */
function climb(rate: number, cut_s: number, noise: number) {
  const random = createRandom(rate);
  const time = Float64Array.from({ length: 3 * rate }, (_, i) => i / rate);
  const courseAt = (t: number) => 450 - 8 * Math.min(t, cut_s) + 80 * Math.max(0, t - cut_s);
  return { time, engineSpeed: time.map((t) => courseAt(t) + noise * random.normal()) };
}

describe('a climb after a gear change with the pedal down', () => {
  it.each([
    [20, 0, 0],
    [20, 0.2, 0],
    [100, 0.25, 0.8],
    [20, 0.25, 0.8],
    [10, 0.3, 0.8],
    [5, 0.4, 0],
  ])('at %i Hz after %f s of cut torque begins where engine speed leaves its level', (rate, cut_s, noise) => {
    const { time, engineSpeed } = climb(rate, cut_s, noise);
    const found = torqueBack(engineSpeed, time, 0, time.length);
    expect(Math.abs(found - cut_s)).toBeLessThan(0.04 + 0.5 / rate);
  });

  it('is left where it was when too few samples tell', () => {
    const { time, engineSpeed } = climb(10, 0.3, 0);
    expect(torqueBack(engineSpeed, time, 2, 6)).toBe(0.2);
  });
});

describe('a gear change that cuts torque under a floored pedal', () => {
  it.each([20, 100])(
    'at %i Hz ends one pull at its first dip and begins the next where the car pulls again',
    (rate) => {
      // Floored from 3 to 11 s, third gear to 7.00 s; engine speed falls within 0.05 s and torque is back at 7.25 s.
      const fourth = 0.76;
      const rpmAt = (t: number) => {
        if (t < 3) return 2500;
        if (t < 7) return 2500 + 800 * (t - 3);
        if (t < 7.05) return 5700 * (1 - ((1 - fourth) * (t - 7)) / 0.05);
        if (t < 7.25) return 5700 * fourth - 150 * (t - 7.05);
        return 5700 * fourth - 30 + 480 * (Math.min(t, 11) - 7.25) - 300 * Math.max(0, t - 11);
      };
      const rows = Array.from({ length: 14 * rate }, (_, i) => {
        const t = i / rate;
        const gear = t < 7.05 ? 0.022 : 0.022 / fourth;
        return [
          t.toFixed(3),
          rpmAt(t).toFixed(0),
          (rpmAt(t) * gear).toFixed(1),
          t >= 3 && t < 11 ? 100 : 10,
        ].join(',');
      });
      const text = ['Time (s),RPM (rpm),Speed (km/h),Pedal (%)', ...rows].join('\n');
      const { pulls } = findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'flat.csv' })));
      expect(pulls).toHaveLength(2);
      expect(Math.abs((pulls[0]?.end_s ?? 0) - 7)).toBeLessThan(0.06);
      expect(Math.abs((pulls[1]?.start_s ?? 0) - 7.25)).toBeLessThan(0.06);
    },
  );
});
