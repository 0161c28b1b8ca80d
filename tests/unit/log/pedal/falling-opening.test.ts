import { describe, expect, it } from 'vitest';
import { channelOf, findPulls, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

const full_s = [3, 11] as const;

/** A drive at 20 Hz with one pull, its throttle in volts as given, manifold pressure beside it or not. */
function logOf(volts: (isFull: boolean, boost_kPa: number) => number, hasPressure = true) {
  const rows = Array.from({ length: 360 }, (_, i) => {
    const t = i / 20;
    const isFull = t >= full_s[0] && t < full_s[1];
    const rpm =
      2400 + 450 * Math.max(0, Math.min(t, full_s[1]) - full_s[0]) - 150 * Math.max(0, t - full_s[1]);
    const boost = isFull ? 110 * (1 - Math.exp(-(t - full_s[0]) / 0.6)) : -60;
    const pressure = hasPressure ? [(100 + boost).toFixed(1)] : [];
    return [t, rpm.toFixed(0), volts(isFull, boost).toFixed(2), (rpm * 0.022).toFixed(1), ...pressure].join(
      ',',
    );
  });
  const head = `Time (s),RPM,TPS (V),Speed (km/h)${hasPressure ? ',MAP (kPa)' : ''}`;
  return unwrap(readLog(new TextEncoder().encode([head, ...rows].join('\n')), { file: 'drive.csv' }));
}

const turned = (log: ReturnType<typeof logOf>) => log.warnings.filter((w) => w.code === 'log/opening-turned');

describe('a throttle in volts', () => {
  it('that falls as it opens is turned round, and that is said', () => {
    const log = logOf((isFull) => (isFull ? 0.5 : 4.2));
    expect(turned(log)).toEqual([{ code: 'log/opening-turned', facts: { column: 'TPS (V)' } }]);
    const { pulls } = findPulls(log);
    expect(pulls).toHaveLength(1);
    expect(pulls[0]?.start_s).toBeCloseTo(full_s[0], 1);
    // The last row before the lift.
    expect(pulls[0]?.end_s).toBeCloseTo(full_s[1] - 0.05, 6);
    const values = channelOf(log, 'throttle')?.values ?? [];
    expect(Math.min(...values)).toBeCloseTo(0.1, 9);
    expect(Math.max(...values)).toBeCloseTo(0.84, 9);
  });

  it('that rises stays, also where its plate half closes at full boost', () => {
    const log = logOf((isFull, boost) => (isFull ? (boost > 100 ? 2.6 : 4.3) : 0.6));
    expect(turned(log)).toEqual([]);
  });

  it('stays where no pressure tells', () => {
    expect(turned(logOf((isFull) => (isFull ? 0.5 : 4.2), false))).toEqual([]);
  });
});
