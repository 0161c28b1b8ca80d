import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

type Row = { rpm: number; throttle: number };

/** A pull from 3 to 11 s at 20 Hz by the throttle alone, with what `change` makes of its rows. */
function pullsOf(change: (row: Row, t: number) => Row) {
  const rows = Array.from({ length: 300 }, (_, i) => {
    const t = i / 20;
    const isPull = t >= 3 && t < 11;
    const rpm = t < 3 ? 2500 : isPull ? 2500 + 450 * (t - 3) : 6100 - 250 * (t - 11);
    const { rpm: shown, throttle } = change({ rpm, throttle: isPull ? 99 : 12 }, t);
    return [t, shown, rpm * 0.022, throttle].join(',');
  });
  const text = ['Time (s),RPM (rpm),Speed (km/h),Throttle (%)', ...rows].join('\n');
  return findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'plate.csv' }))).pulls.map((p) => ({
    start_s: p.start_s,
    end_s: p.end_s,
    flags: p.flags.map((f) => f.code),
  }));
}
const shutTo = (throttle: number, from: number, to: number) => (row: Row, t: number) =>
  t > from && t < to ? { ...row, throttle } : row;

describe('a throttle that closes within a pull, with no pedal logged', () => {
  it('part of the way and is soon open again was closed by the engine: one pull, flagged', () => {
    expect(pullsOf(shutTo(45, 6.9, 7.4))).toEqual([
      { start_s: 3, end_s: 10.95, flags: ['log/pull-intervention'] },
    ]);
  });

  it('altogether was closed by the foot: two pulls', () => {
    expect(pullsOf(shutTo(12, 6.9, 7.4))).toHaveLength(2);
  });

  it('for longer than a second was closed by the foot too', () => {
    expect(pullsOf(shutTo(45, 6.5, 7.8))).toHaveLength(2);
  });

  it('while engine speed falls was closed for a gear change', () => {
    const shift = (row: Row, t: number) => {
      const low = t > 6.9 && t < 11 ? { ...row, rpm: 0.8 * row.rpm } : row;
      return shutTo(45, 6.9, 7.2)(low, t);
    };
    expect(pullsOf(shift)).toHaveLength(2);
  });
});

describe('a converter that slips when the foot comes down', () => {
  it('is no change down: the pull begins with the foot', () => {
    // Engine speed runs ahead of the road by 13 % within 0.3 s and stays there.
    const flare = (row: Row, t: number) =>
      t < 3 ? row : { ...row, rpm: row.rpm * (1 + 0.13 * Math.min(1, (t - 3) / 0.3)) };
    expect(pullsOf(flare)).toMatchObject([{ start_s: 3, end_s: 10.95 }]);
  });
});
