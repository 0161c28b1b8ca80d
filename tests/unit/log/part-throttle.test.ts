import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

const step = 1 / 20;
const rpm = Math.PI / 30;
/** Engine over road speed [rad/m] of second and third gear, as of 1.9 and 1.3 over a final drive of 4 and 0.31 m. */
const gears = { second: 24.5, third: 16.8 } as const;

/** A stretch with the foot where it makes this share of the engine's torque, from one engine speed to another [rpm]. */
type Stretch = { readonly gear: keyof typeof gears; readonly share: number; from: number; to: number };

/**
 * Time, engine and road speed of an invented car of 1,400 kg whose 240 N m fall off to either side of 4,200 rpm,
 * driven through stretches with five seconds of rolling out between them.
 */
function logOf(stretches: readonly Stretch[], grade = (_: number) => 0): string {
  const rows: string[] = ['Time (s),RPM (rpm),Speed (km/h)'];
  let t = 0;
  const write = (ratio: number, v: number) => {
    rows.push(`${t.toFixed(2)},${((v * ratio) / rpm).toFixed(0)},${(3.6 * v).toFixed(1)}`);
    t += step;
  };
  stretches.forEach(({ gear, share, from, to }, i) => {
    const ratio = gears[gear];
    let v = (from * rpm) / ratio;
    const drag = () => 0.14 + 3.2e-4 * v * v + 9.81 * grade(i);
    const until = t + 5;
    let w = v + 0.45 * 5;
    while (t < until) {
      w -= 0.45 * step;
      write(ratio, w);
    }
    v = w;
    const begun = t;
    while (v * ratio < to * rpm) {
      const torque = 240 * (1 - 0.25 * ((v * ratio - 440) / 300) ** 2) * share;
      const foot = Math.min(1, (t - begun) / 0.2);
      v += ((foot * torque * ratio * 0.92) / (1400 + 60 + 0.2 * ratio * ratio) - drag()) * step;
      write(ratio, v);
    }
    for (const end = t + 2; t < end; ) {
      v -= 0.9 * step;
      write(ratio, v);
    }
  });
  return rows.join('\n');
}

const found = (text: string) =>
  findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'force.csv' }))).pulls.map(
    ({ rpmFrom, rpmTo }) => [Math.round(rpmFrom / 500) * 500, Math.round(rpmTo / 500) * 500],
  );

const full = { gear: 'third', share: 1, from: 2500, to: 6000 } as const;

describe('full throttle by force', () => {
  it('is not what makes four fifths of another pull in the same gear', () => {
    expect(found(logOf([full, { ...full, share: 0.8, to: 5000 }, full]))).toEqual([
      [2500, 6000],
      [2500, 6000],
    ]);
  });

  it('is not what makes four fifths of a pull in another gear', () => {
    expect(found(logOf([full, { ...full, gear: 'second', share: 0.8, to: 5000 }, full]))).toEqual([
      [2500, 6000],
      [2500, 6000],
    ]);
  });

  it('is told the same in a lower gear, where the engine itself takes more of the torque', () => {
    expect(found(logOf([full, { ...full, gear: 'second' }, full]))).toHaveLength(3);
  });

  it('is told up and down a slope of 1 in 100', () => {
    expect(found(logOf([full, full, full, full], (i) => (i % 2 === 0 ? 0.01 : -0.01)))).toHaveLength(4);
  });

  it('is told where there is but one pull', () => {
    expect(found(logOf([full]))).toHaveLength(1);
  });

  it('is not a weak run below all engine speeds of the pulls', () => {
    const pull = { ...full, from: 3600 };
    expect(found(logOf([pull, { ...full, share: 0.66, from: 1600, to: 2600 }, pull]))).toHaveLength(2);
  });
});

describe('full throttle by pressure', () => {
  /** Pulls where a run of `lasts_s` from 14 m/s, its pressure going from `first` to `last` [kPa gauge], comes before a pull. */
  const withRun = (first: number, last: number, lasts_s: number) => {
    const rows = Array.from({ length: 600 }, (_, i) => {
      const t = i * step;
      const run = (t - 3) / lasts_s;
      const isRun = run >= 0 && run < 1;
      const isPull = t >= 12 && t < 18;
      const v = isRun ? 14 + 2.5 * run : isPull ? 14 + 3.5 * (t - 12) : t < 12 ? 14 : 35;
      const boost = isRun ? first + (last - first) * run : isPull ? Math.min(90, 15 * (t - 12) ** 1.5) : -65;
      return [t.toFixed(2), ((v * 17) / rpm).toFixed(0), (3.6 * v).toFixed(1), boost.toFixed(1)].join(',');
    });
    return found(['Time (s),RPM (rpm),Speed (km/h),Boost (kPa)', ...rows].join('\n')).length;
  };

  it('is none where the pressure sinks while engine speed climbs and there is no boost yet', () => {
    expect(withRun(-0.5, -5, 2)).toBe(1);
  });

  it('is one where the pressure stays or rises', () => {
    expect(withRun(-1.5, -1, 1.8)).toBe(2);
    expect(withRun(-2, 8, 1.8)).toBe(2);
  });

  it('is none where a charger makes hardly any boost in the time in which it spins up', () => {
    expect(withRun(0, 15, 3.5)).toBe(1);
    expect(withRun(0, 75, 3.5)).toBe(2);
  });
});
