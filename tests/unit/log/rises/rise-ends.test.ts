import { describe, expect, it } from 'vitest';
import { startAfterShift } from '../../../../core/log/rises/gear-shift.ts';
import { heldOnLimiter, standsAfter } from '../../../../core/log/rises/limiter-hold.ts';
import { risingSpans } from '../../../../core/log/rises/rising-spans.ts';

const rate = 50;
const rpm = Math.PI / 30;

/** Engine speed [rad/s] at 50 a second from its course in rpm over time. */
function log(seconds: number, courseAt: (t: number) => number) {
  const time = Float64Array.from({ length: seconds * rate }, (_, i) => i / rate);
  return { time, engineSpeed: time.map((t) => courseAt(t) * rpm), segment: { from: 0, to: time.length } };
}
const indexOf = (t: number) => Math.round(t * rate);

describe('full throttle after a gear change', () => {
  /** Up to 6,000 rpm at 2 s, down to 4,500 in `shift_s`, then 800 rpm/s that a foot brings in evenly. */
  const shifted = (shift_s: number, foot_s: number) => {
    const { time, engineSpeed, segment } = log(5, (t) => {
      const since = t - 2 - shift_s;
      if (since < 0) return t < 2 ? 6000 - 700 * (2 - t) : 6000 - (1500 * (t - 2)) / shift_s;
      const eased =
        foot_s === 0 ? since : Math.min(since, foot_s) ** 2 / (2 * foot_s) + Math.max(0, since - foot_s);
      return 4500 + 800 * eased;
    });
    const lowest = indexOf(2 + shift_s);
    const rise = { from: lowest, to: time.length, segment, isOwnMove: false };
    const { at_s, within_s } = startAfterShift(engineSpeed, time, rise, lowest);
    return { late_s: at_s - 2 - shift_s, within_s };
  };

  it('begins at once where a box changed, and is sure', () => {
    expect(shifted(0.2, 0)).toEqual({ late_s: expect.closeTo(0, 2), within_s: 0 });
  });

  it('waits for the foot where a hand changed, longer for a slower one, and says how far it may be off', () => {
    const quick = shifted(0.5, 0.1);
    const slow = shifted(0.5, 0.4);
    expect(quick.late_s).toBeGreaterThan(0.1);
    expect(Math.abs(quick.late_s - 0.1)).toBeLessThan(0.15);
    expect(Math.abs(slow.late_s - 0.4)).toBeLessThan(0.15);
    for (const { within_s } of [quick, slow]) expect(within_s).toBeGreaterThan(0.15);
  });
});

describe('the end of a pull at the top of the log', () => {
  const top = 6500 * rpm;
  const at = (courseAfter: (since: number) => number) => {
    const { time, engineSpeed, segment } = log(6, (t) => (t < 3 ? 6500 - 900 * (3 - t) : courseAfter(t - 3)));
    return { engineSpeed, time, rise: { from: 0, to: indexOf(3), segment, isOwnMove: false } };
  };

  it('on a limiter says that the foot may have left as long before as engine speed stood', () => {
    const { engineSpeed, time, rise } = at((s) => 6500 - (s < 1 ? 0 : 900 * (s - 1)));
    const held = heldOnLimiter(engineSpeed, time, rise, top);
    expect(held?.at_s).toBeGreaterThan(3.6);
    expect(held?.within_s).toBeGreaterThan(0.6);
  });

  it('is sure where engine speed falls at once, and not where it rolls on as on a limiter', () => {
    const fall = at((s) => 6500 - 400 * s);
    const roll = at((s) => 6500 - 60 * s);
    expect(standsAfter(fall.engineSpeed, fall.time, fall.rise, top, 3)).toBe(0);
    expect(standsAfter(roll.engineSpeed, roll.time, roll.rise, top, 3)).toBeGreaterThan(0.9);
    // Far below the top of the log no limiter stands.
    expect(standsAfter(roll.engineSpeed, roll.time, roll.rise, 1.1 * top, 3)).toBe(0);
  });
});

describe('wheels that spin soon after the start', () => {
  it('do not begin another pull: it begins with the foot', () => {
    const spin = (t: number) => (t > 3.8 && t < 4.3 ? 0.06 * Math.sin((Math.PI * (t - 3.8)) / 0.5) : 0);
    const road = (t: number) => 2500 + 700 * Math.max(0, Math.min(t, 7) - 3) - 500 * Math.max(0, t - 7);
    const { time, engineSpeed, segment } = log(9, (t) => road(t) * (1 + spin(t)));
    const ratio = time.map((t) => 1 + spin(t));
    const signals = { engineSpeed, time, segments: [segment], boost: null };
    const [first, ...others] = risingSpans({ ...signals, ratio });
    expect(others).toEqual([]);
    expect(Math.abs((time[first?.from ?? 0] as number) - 3)).toBeLessThan(0.2);
    // Without the road's speed the spin can't be told from a foot: what comes after it is the pull.
    const blind = risingSpans({ ...signals, ratio: null });
    expect(blind).toHaveLength(1);
    expect(time[blind[0]?.from ?? 0]).toBeGreaterThan(3.8);
  });
});
