import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

/**
 * Rows at 20 Hz of an engine that drives a car through soft shafts: two masses that swing against each other, a spring and its damping, in a gear of
 * 12.5 rad/s per m/s. The foot is down from 4 s on, and lifts within 0.1 s at the moment given.
 */
function rows(lift_s: number, swing_Hz: number): string[] {
  const gear = 12.5;
  const engine = 0.18;
  const car = 1500 / gear ** 2;
  const reduced = 1 / (1 / engine + 1 / car);
  const spring = reduced * (2 * Math.PI * swing_Hz) ** 2;
  const damping = 2 * 0.3 * Math.sqrt(spring * reduced);
  let [w, v, twist, torque] = [250, 250 / gear, 0, 20];
  const out: string[] = [];
  const step = 0.0005;
  for (let i = 0; i * step < lift_s + 4; i++) {
    const t = i * step;
    if (i % 100 === 0) out.push(`${t.toFixed(3)},${((w * 30) / Math.PI).toFixed(0)},${(3.6 * v).toFixed(1)}`);
    const foot = t < 4 ? 0.15 : t < lift_s ? Math.min(1, (t - 4) / 0.2) : Math.max(0, 1 - (t - lift_s) / 0.1);
    torque += ((300 * foot - 25 - torque) * step) / 0.07;
    const along = spring * twist + damping * (w - v * gear);
    twist += (w - v * gear) * step;
    w += ((torque - along) / engine) * step;
    v += ((along * gear - 180 - 0.4 * v * v) / 1500) * step;
  }
  return out;
}

describe('a lift that acceleration alone tells', () => {
  it.each([
    [8.02, 8],
    [8.63, 8],
    [9.04, 10],
    [9.47, 12],
  ])('at %f s, through shafts that swing %i times a second, is found within 0.15 s', (lift_s, swing_Hz) => {
    const text = ['Time (s),RPM (rpm),Speed (km/h)', ...rows(lift_s, swing_Hz)].join('\n');
    const { pulls } = findPulls(unwrap(readLog(new TextEncoder().encode(text), { file: 'soft.csv' })));
    expect(pulls).toHaveLength(1);
    expect(Math.abs((pulls[0]?.end_s ?? 0) - lift_s)).toBeLessThan(0.15);
  });
});
