import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

/** Codes of the flags of a pull that climbs by `climb` rpm a second from 3 s on and stands at its top for `held_s`. */
function flagsOf({ climb, held_s, top = 6500, before = 0 }: Record<string, number>) {
  const [rise = 0, held = 0] = [climb, held_s];
  const end = 3 + (top - 3000) / rise;
  const rows = Array.from({ length: Math.ceil((end + held + 4) * 20) }, (_, i) => {
    const t = i / 20;
    // Some 8 rpm of noise, as a sine of no period that the rows know.
    const noise = 8 * Math.sin(12.9 * i) + 4 * Math.sin(4.1 * i);
    const climbed = 3000 + rise * (t - 3) - (t > end - 1 ? before * (t - end + 1) ** 2 : 0);
    const rpm = t < 3 ? 3000 : t < end ? climbed : t < end + held ? top : top - 300 * (t - end - held);
    const pedal = t >= 3 && t < end + held ? 100 : 10;
    return [t.toFixed(2), (rpm + noise).toFixed(0), (rpm * 0.03).toFixed(1), pedal].join(',');
  });
  const text = ['Time (s),RPM (rpm),Speed (km/h),Pedal (%)', ...rows].join('\n');
  const log = unwrap(readLog(new TextEncoder().encode(text), { file: 'limiter.csv' }));
  return findPulls(log).pulls[0]?.flags.map((f) => f.code);
}

describe('a pull that stands at its top', () => {
  it.each([
    [250, 0.5],
    [250, 0.8],
    [400, 0.35],
    [900, 0.35],
  ])('after a climb of %d rpm a second for %f s stood on the limiter', (climb, held_s) => {
    expect(flagsOf({ climb, held_s })).toEqual(['log/pull-limiter']);
  });

  it.each([250, 400, 900])('not at all, after a climb of %d rpm a second, met none', (climb) => {
    expect(flagsOf({ climb, held_s: 0 })).toEqual([]);
  });

  it('no more than the climb slows as the engine runs out of breath met none', () => {
    expect(flagsOf({ climb: 400, held_s: 0, before: 150 })).toEqual([]);
  });
});
