import { describe, expect, it } from 'vitest';
import { findPulls, flagsWithin, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

const rpm = Math.PI / 30;
const step_s = 0.002;
const floored_s = 4;

type Row = { readonly t: number; readonly rpm: number; readonly kmh: number; readonly pedal: number };
type Stretch = { readonly from: number; readonly to: number };

/** One pull of an invented car in third gear, 20 rows a second; within `lift` [s] the foot comes up and goes down. */
function drivenRows(lift: Stretch | null = null): Row[] {
  const ratio = 16.8;
  const rows: Row[] = [];
  let v = (2200 * rpm) / ratio;
  let charge = 0;
  let ended = Number.POSITIVE_INFINITY;
  for (let k = 0; k * step_s < ended + 3; k++) {
    const t = k * step_s;
    const engine = (v * ratio) / rpm;
    if (engine > 6300 && !Number.isFinite(ended)) ended = t;
    let foot = t < floored_s ? 0.15 : Math.min(1, (t - floored_s) / 0.15);
    if (lift && t > lift.from && t < lift.to)
      foot = Math.max(0, 1 - Math.min(t - lift.from, lift.to - t) / 0.1);
    if (t > ended) foot = Math.max(0, 1 - (t - ended) / 0.15);
    charge += ((foot * Math.min(1, engine / 3200) - charge) * step_s) / 0.3;
    const drag = 200 + 0.4 * v * v;
    const torque = 150 * foot * (1 - 0.25 * ((engine - 4200) / 3000) ** 2) + 150 * charge * foot;
    const force = t < floored_s ? drag : 0.9 * torque * ratio;
    v += (step_s * (force - drag)) / 1500;
    if (k % 25 === 0) rows.push({ t, rpm: engine, kmh: 3.6 * v, pedal: 100 * foot });
  }
  return rows;
}

/** The log of such a drive without the rows of `gaps`. */
function logOf(rows: readonly Row[], gaps: readonly Stretch[], hasPedal = true) {
  const kept = rows.filter(({ t }) => !gaps.some((gap) => t > gap.from && t < gap.to));
  const lines = kept.map((row) => {
    const cells = [row.t.toFixed(2), row.rpm.toFixed(0), row.kmh.toFixed(1)];
    return (hasPedal ? [...cells, row.pedal.toFixed(1)] : cells).join(',');
  });
  const header = `Time (s),RPM (rpm),Speed (km/h)${hasPedal ? ',Pedal (%)' : ''}`;
  return unwrap(readLog(new TextEncoder().encode([header, ...lines].join('\n')), { file: 'gap.csv' }));
}

const endsOf = (log: ReturnType<typeof logOf>) =>
  findPulls(log).pulls.map(({ from, to }) => [log.time[from] ?? 0, log.time[to - 1] ?? 0] as const);

describe('missing rows within a pull', () => {
  const whole = endsOf(logOf(drivenRows(), []))[0] ?? [0, 0];

  it.each([0.55, 0.9, 1.3])('part nothing where %s s are missing and speed goes on as before', (missing) => {
    const [ends, ...others] = endsOf(logOf(drivenRows(), [{ from: 6, to: 6 + missing }]));
    expect(others).toEqual([]);
    expect(ends?.[0]).toBeCloseTo(whole[0], 6);
    expect(ends?.[1]).toBeCloseTo(whole[1], 6);
  });

  it('are bridged with the foot not logged too', () => {
    expect(endsOf(logOf(drivenRows(), [{ from: 6, to: 6.9 }], false))).toHaveLength(1);
  });

  it('are told with the pull: where, and how much', () => {
    const log = logOf(drivenRows(), [
      { from: 6, to: 6.6 },
      { from: 8, to: 8.9 },
    ]);
    const pull = findPulls(log).pulls[0];
    const gap = pull?.flags.find(({ code }) => code === 'log/pull-gap');
    expect(gap?.facts).toEqual({ time_s: expect.closeTo(8, 6), missing_s: expect.closeTo(0.9, 6) });
    if (!pull) throw new Error('the drive has one pull');
    // Cut off behind the first gap, the pull holds that one alone.
    const cut = log.time.findIndex((t) => t > 7.5);
    const within = flagsWithin(log, pull, { from: pull.from, to: cut });
    expect(within.find(({ code }) => code === 'log/pull-gap')?.facts).toEqual({
      time_s: expect.closeTo(6, 6),
      missing_s: expect.closeTo(0.6, 6),
    });
  });

  it.each([true, false])(
    'part a pull in which the foot lifted and came back meanwhile (pedal logged: %s)',
    (pedal) => {
      const lift = { from: 6.05, to: 6.65 };
      const ends = endsOf(logOf(drivenRows(lift), [{ from: 6, to: 6.7 }], pedal));
      expect(ends).toHaveLength(2);
      expect(ends[0]?.[1]).toBeLessThanOrEqual(6);
      expect(ends[1]?.[0]).toBeGreaterThanOrEqual(6.7);
    },
  );

  it('part a pull where two seconds are missing, which hide anything', () => {
    expect(endsOf(logOf(drivenRows(), [{ from: 6, to: 8 }]))).toHaveLength(2);
  });

  it('part nothing shortly before the lift, where the foot stands for a quarter of a second only', () => {
    const gap = { from: whole[1] - 1.2, to: whole[1] - 0.3 };
    const [ends, ...others] = endsOf(logOf(drivenRows(), [gap]));
    expect(others).toEqual([]);
    expect(ends?.[1]).toBeCloseTo(whole[1], 6);
  });
});
