import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

/** The first pull of a log of 60 s at 20 Hz whose foot is down from 20 to 26 s and from 40 to 46 s. */
function pullBy(pedalAt: (t: number) => number) {
  const rows = Array.from({ length: 1200 }, (_, i) => {
    const t = i / 20;
    const since = t >= 40 ? t - 40 : t - 20;
    const rpm = since < 0 || since > 18 ? 2500 : since < 6 ? 2500 + 550 * since : 5800 - 275 * (since - 6);
    return [t.toFixed(2), rpm.toFixed(0), (rpm * 0.022).toFixed(1), pedalAt(t).toFixed(0)].join(',');
  });
  const text = ['Time (s),RPM (rpm),Speed (km/h),Pedal (%)', ...rows].join('\n');
  const log = unwrap(readLog(new TextEncoder().encode(text), { file: 'pedal.csv' }));
  return findPulls(log).pulls.at(0);
}

const isDown = (t: number) => (t >= 20 && t < 26) || (t >= 40 && t < 46);

describe('the pull of a pedal', () => {
  it('that creeps by one percent now and then begins with its first row at full throttle', () => {
    const pull = pullBy((t) => (isDown(t) ? 100 : 10 + Math.floor(((t % 20) + 0.2) / 0.42)));
    expect(pull?.start_s).toBeCloseTo(20, 3);
    expect(pull?.end_s).toBeCloseTo(25.95, 3);
    expect(pull?.flags).toEqual([]);
  });

  it('that rests and moves at once now and then begins with its first row at full throttle', () => {
    const rests = [0, 12, 0, 15, 31, 22, 40, 0, 18, 33];
    const pull = pullBy((t) => (isDown(t) ? 100 : (rests[Math.floor(t / 1.9) % rests.length] ?? 0)));
    expect(pull?.start_s).toBeCloseTo(20, 3);
    expect(pull?.flags).toEqual([]);
  });

  it('that is renewed every 0.4 s begins half of that before it, and says so', () => {
    // Traffic: the foot moves all the time, by more than a percent between two renewals.
    const foot = (t: number) => (isDown(t) ? 100 : 20 + 9 * Math.sin(1.7 * t) + 5 * Math.sin(4.1 * t));
    const pull = pullBy((t) => foot(Math.floor((t + 0.13) / 0.4) * 0.4 - 0.13));
    const firstRow = Math.ceil((20 + 0.13) / 0.4) * 0.4 - 0.13;
    expect(pull?.start_s).toBeGreaterThan(firstRow - 0.26);
    expect(pull?.start_s).toBeLessThan(firstRow - 0.14);
    expect(pull?.flags.map((f) => f.code)).toContain('log/pull-start-uncertain');
  });
});
