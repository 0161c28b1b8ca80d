import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { withoutCreep } from '../../../../core/log/pedal/plate-creeps.ts';
import { unwrap } from '../../../../core/result/index.ts';

const startOf = (opening: readonly number[], from: number) =>
  withoutCreep(
    [{ from, to: opening.length }],
    Float64Array.from(opening),
    1,
    Float64Array.from(opening, (_, i) => i / 20),
    [{ from: 0, to: opening.length }],
  )[0]?.startAt_s;

describe('a plate that creeps into its stop', () => {
  it('is taken for open half way between 0.8 and 0.9 of it', () => {
    expect(startOf([0.4, 0.8, 0.9, 0.94, 0.97, 1, 1], 4)).toBeCloseTo(0.075, 9);
  });

  it('is open with its row where it gets there from one row to the next', () => {
    expect(startOf([0.1, 0.1, 0.1, 0.4, 1, 1, 1], 4)).toBeUndefined();
  });

  it('is the foot itself where it stands short of the stop for longer', () => {
    expect(startOf([0.1, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 1, 1], 7)).toBeUndefined();
  });

  it('began to be held before the file did where no row shows it lower', () => {
    expect(startOf([0.9, 0.9, 0.96, 1, 1], 2)).toBeUndefined();
  });
});

/** Pulls of a log at 20 Hz whose plate or pedal follows a foot at 3.0 and 8.0 s with a lag. */
function pullsOf(column: string, lag_s: number, rise_rpm_s: number, end_s = 8) {
  const rows = Array.from({ length: 300 }, (_, i) => {
    const t = i / 20;
    const opening = t < 3 ? 0 : t < end_s ? 1 - Math.exp(-(t - 3) / lag_s) : 0;
    const rpm = t < 3 ? 2500 : 2500 + rise_rpm_s * Math.min(t - 3, end_s - 3) - 150 * Math.max(0, t - end_s);
    return [t, rpm.toFixed(0), (rpm * 0.03).toFixed(1), (10 + 90 * opening).toFixed(1)].join(',');
  });
  const text = [`Time (s),RPM (rpm),Speed (km/h),${column}`, ...rows].join('\n');
  return findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'creep.csv' }))).pulls;
}

describe('a pull told by its plate', () => {
  it.each([0.02, 0.04, 0.06, 0.07])(
    'that follows the foot with a lag of %f s begins within 0.15 s of the foot',
    (lag_s) => {
      const [pull, ...others] = pullsOf('Throttle (%)', lag_s, 600);
      expect(others).toEqual([]);
      expect(Math.abs((pull?.start_s ?? 0) - 3)).toBeLessThan(0.15);
    },
  );
});

describe('a foot that lifts soon, in a high gear off boost', () => {
  it('leaves an aborted pull of 100 rpm', () => {
    const pulls = pullsOf('Accelerator pedal (%)', 0.01, 100, 4.3);
    expect(pulls).toHaveLength(1);
    expect(pulls[0]?.complete).toBe(false);
    expect(pulls[0]?.start_s).toBeCloseTo(3, 0);
  });

  it('is no pull where engine speed hardly rises at all, as on a hill', () => {
    expect(pullsOf('Accelerator pedal (%)', 0.01, 20, 4.3)).toEqual([]);
    expect(pullsOf('Accelerator pedal (%)', 0.01, 30, 8)).toEqual([]);
  });
});
