import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { pullTimes } from '../../../../core/log/pulls/pull-times.ts';
import { unwrap } from '../../../../core/result/index.ts';

/** A pull by the pedal from 3 to 11 s, in rows `step` apart that begin `phase` after zero. */
function foundIn(step: number, phase: number) {
  const rows: string[] = [];
  for (let t = phase; t < 15; t += step) {
    const isPull = t >= 3 && t < 11;
    const rpm = t < 3 ? 2500 : isPull ? 2500 + 450 * (t - 3) : 6100 - 250 * (t - 11);
    rows.push([t.toFixed(3), rpm.toFixed(0), (rpm * 0.022).toFixed(1), isPull ? 100 : 12].join(','));
  }
  const text = ['Time (s),RPM (rpm),Speed (km/h),Pedal (%)', ...rows].join('\n');
  const [pull] = findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'slow.csv' }))).pulls;
  return { start_s: pull?.start_s ?? Number.NaN, end_s: pull?.end_s ?? Number.NaN };
}

describe('when a pull began and ended', () => {
  it.each([0, 0.03, 0.07, 0.11, 0.15, 0.19])(
    'is told within half a row where rows are 0.2 s apart, %d s on',
    (phase) => {
      const { start_s, end_s } = foundIn(0.2, phase);
      expect(Math.abs(start_s - 3)).toBeLessThanOrEqual(0.101);
      expect(Math.abs(end_s - 11)).toBeLessThanOrEqual(0.101);
    },
  );

  it.each([0, 0.03, 0.06, 0.09])(
    'is told within three quarters of a row where rows are 0.1 s apart, %d s on',
    (phase) => {
      const { start_s, end_s } = foundIn(0.1, phase);
      expect(Math.abs(start_s - 3)).toBeLessThanOrEqual(0.076);
      expect(Math.abs(end_s - 11)).toBeLessThanOrEqual(0.076);
    },
  );

  it('is the time of the first and last sample at full throttle in a faster log', () => {
    expect(foundIn(0.05, 0.03)).toEqual({ start_s: 3.03, end_s: 10.98 });
  });

  it('is as told by what found it, in quicker rows a quarter of one towards those that show it', () => {
    const slow = log([{ from: 0, to: 6 }]);
    const told = { from: 1, to: 5, startAt_s: 0.14, endAt_s: 0.86 };
    expect(pullTimes(slow, told)).toEqual({ start_s: 0.14, end_s: 0.86 });
    const quick = log([{ from: 0, to: 6 }], [0, 0.1, 0.2, 0.3, 0.4, 0.5]);
    const times = pullTimes(quick, { from: 1, to: 5, startAt_s: 0.07, endAt_s: 0.43 });
    expect(times.start_s).toBeCloseTo(0.095, 9);
    expect(times.end_s).toBeCloseTo(0.405, 9);
  });

  const log = (segments: readonly { from: number; to: number }[], time = [0, 0.2, 0.4, 0.6, 0.8, 1]) => ({
    time: Float64Array.from(time),
    segments,
  });

  it('is the middle between the rows around it', () => {
    const times = pullTimes(log([{ from: 0, to: 6 }]), { from: 1, to: 5 });
    expect(times.start_s).toBeCloseTo(0.1, 9);
    expect(times.end_s).toBeCloseTo(0.9, 9);
  });

  it('does not reach beyond the recording, nor far into a gap', () => {
    expect(pullTimes(log([{ from: 1, to: 5 }]), { from: 1, to: 5 })).toEqual({ start_s: 0.2, end_s: 0.8 });
    const gap = pullTimes(log([{ from: 0, to: 6 }], [-1, 0.2, 0.4, 0.6, 0.8, 3]), { from: 1, to: 5 });
    expect(gap.start_s).toBeCloseTo(0.1, 9);
    expect(gap.end_s).toBeCloseTo(0.9, 9);
  });
});
