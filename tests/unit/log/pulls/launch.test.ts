import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { isLaunch } from '../../../../core/log/pulls/launch.ts';
import { unwrap } from '../../../../core/result/index.ts';

const array = (n: number, of: (t: number) => number) =>
  Float64Array.from({ length: n }, (_, i) => of(i / 20));
const all = { from: 0, to: 60 };
/** [rad/s]: up to 300, down to 120 as the clutch bites, up again. */
const bite = (t: number) =>
  t < 0.5 ? 100 + 400 * t : t < 0.9 ? 300 - 450 * (t - 0.5) : 120 + 60 * (t - 0.9);

describe('a car that moves off', () => {
  it('is one that hardly rolls while its clutch bites', () => {
    expect(
      isLaunch(
        array(60, bite),
        array(60, (t) => 2.5 * t),
        all,
      ),
    ).toBe(true);
  });

  it('is none that pulls from walking pace in gear', () => {
    expect(
      isLaunch(
        array(60, (t) => 100 + 60 * t),
        array(60, (t) => 1 + t),
        all,
      ),
    ).toBe(false);
  });

  it('is none whose engine speed falls at speed, as wheels catch grip again', () => {
    expect(
      isLaunch(
        array(60, bite),
        array(60, (t) => 15 + 2.5 * t),
        all,
      ),
    ).toBe(false);
  });

  it('is no pull where pressure alone tells full throttle', () => {
    const rows = Array.from({ length: 500 }, (_, i) => {
      const t = i / 20;
      const isMovingOff = t >= 2 && t < 4.4;
      const isPull = t >= 12 && t < 18;
      const v =
        t < 2 ? 0 : t < 4.4 ? 2.9 * (t - 2) : t < 12 ? 7 : isPull ? 7 + 3 * (t - 12) : 25 - 0.6 * (t - 18);
      const w = t < 2 ? 90 : isMovingOff ? Math.max(bite(t - 2), 40 * v) : v * (t < 12 ? 30 : 24);
      const boost = isMovingOff ? -1 : isPull ? Math.min(60, 15 * (t - 12)) : -65;
      return [t, ((w * 30) / Math.PI).toFixed(0), (3.6 * v).toFixed(1), boost.toFixed(1)].join(',');
    });
    const text = ['Time (s),RPM (rpm),Speed (km/h),Boost (kPa)', ...rows].join('\n');
    const { pulls } = findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'off.csv' })));
    expect(pulls).toHaveLength(1);
    expect(pulls[0]?.start_s).toBeCloseTo(12, 0);
  });
});
