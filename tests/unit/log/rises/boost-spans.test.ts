import { describe, expect, it } from 'vitest';
import { boostSpans } from '../../../../core/log/rises/boost-spans.ts';

/** Manifold pressure [Pa gauge] of a foot that is down at 3.0 s and lifts from 9.0 s on, rows `step` apart. */
function pull(step: number, phase: number, lift_s: number, lag_s: number) {
  const fine = 0.005;
  let pressure = -6e4;
  let charge = 0;
  const course: number[] = [];
  for (let t = 0; t < 13; t += fine) {
    const down = Math.min(1, Math.max(0, (t - 2.8) / 0.2));
    const open = t < 9 ? down : Math.max(0, 1 - (t - 9) / lift_s);
    const plate = 1 - (1 - open) ** 1.8;
    charge += ((7e4 * plate ** 2 - charge) * fine) / 0.35;
    pressure += ((-6e4 + 5.9e4 * plate + charge * plate - pressure) * fine) / lag_s;
    course.push(pressure);
  }
  const time = Float64Array.from({ length: Math.floor((12.8 - phase) / step) }, (_, i) => phase + i * step);
  const boost = time.map((t) => course[Math.round(t / fine)] ?? Number.NaN);
  const engineSpeed = time.map((t) => 250 + 45 * Math.min(6, Math.max(0, t - 3)));
  return boostSpans(boost, engineSpeed, time, [{ from: 0, to: time.length }]) ?? [];
}

describe('a pull told by manifold pressure', () => {
  const lifts = [
    [0.08, 0.03],
    [0.25, 0.03],
    [0.12, 0.09],
  ] as const;
  for (const step of [0.2, 0.1, 0.05, 0.01])
    it(`has both ends within 0.15 s in rows ${step} s apart, wherever they lie`, () => {
      for (let k = 0; k < 5; k++)
        for (const [lift_s, lag_s] of lifts) {
          const [span, ...others] = pull(step, (k / 5) * step, lift_s, lag_s);
          expect(others).toEqual([]);
          expect(Math.abs((span?.startAt_s ?? 0) - 3)).toBeLessThan(0.15);
          expect(Math.abs((span?.endAt_s ?? 0) - 9)).toBeLessThan(0.12);
        }
    });
});

describe('a charger that comes up at once', () => {
  /**
   * Down at 3.0 s after `foot_s`, by which the vacuum is gone; from then on the pressure goes on by `rise` [Pa/s] for
   * 0.4 s, and by less and less after it.
   */
  const spanWith = (rise: number, foot_s: number) => {
    const time = Float64Array.from({ length: 240 }, (_, i) => i / 20);
    const boost = time.map((t) => {
      const since = t - 3;
      if (t > 9) return -6e4;
      if (since < 0) return -8e4 * Math.min(1, Math.max(0, -since / foot_s));
      return rise * Math.min(since, 0.4) + rise * 0.3 * (1 - Math.exp(-Math.max(0, since - 0.4) / 0.3));
    });
    const engineSpeed = time.map((t) => 250 + 45 * Math.min(6, Math.max(0, t - 3)));
    return boostSpans(boost, engineSpeed, time, [{ from: 0, to: time.length }])?.[0];
  };

  it.each([
    [1.5e5, 0.2],
    [2e5, 0.2],
    [2.5e5, 0.2],
    [2.5e5, 0.3],
    [3e5, 0.2],
    [3e5, 0.3],
  ])('at %d Pa/s, foot down in %f s, leaves a start that says how far off it may be', (rise, foot_s) => {
    const { startAt_s = Number.NaN, startWithin_s = 0 } = spanWith(rise, foot_s) ?? {};
    expect(Math.abs(startAt_s - 3)).toBeLessThanOrEqual(Math.max(0.15, startWithin_s));
  });
});

describe('starts of a driver who floors the pedal at once', () => {
  /** How late four such pulls are told, at 20 rows a second in steps of 1 kPa [s]. */
  const lateBy = (low: number, lag_s: number) => {
    const starts = [8.01, 23.03, 38.02, 50];
    const isDown = (t: number) => starts.some((start) => t >= start && t < start + 5);
    const time = Float64Array.from({ length: 1200 }, (_, i) => i / 20);
    let pressure = low;
    let speed = 250;
    const engineSpeed = new Float64Array(time.length);
    const boost = time.map((t, i) => {
      for (let k = 0; k < 50; k++) {
        pressure += (((isDown(t - 0.05 + k / 1000) ? 2e4 : low) - pressure) * 0.001) / lag_s;
        speed = Math.max(250, speed + (isDown(t) ? 0.06 : -0.03));
      }
      engineSpeed[i] = speed;
      return Math.round(pressure / 1e3) * 1e3;
    });
    const spans = boostSpans(boost, engineSpeed, time, [{ from: 0, to: time.length }]) ?? [];
    expect(spans).toHaveLength(starts.length);
    return spans.map((span, i) => Math.abs((span.startAt_s ?? 0) - (starts[i] ?? 0)));
  };

  it.each([
    [-6e4, 0.24],
    [-6e4, 0.2],
  ])('are told within 0.15 s where pressure rises from %f Pa behind a lag of %f s', (low, lag_s) => {
    for (const late_s of lateBy(low, lag_s)) expect(late_s).toBeLessThan(0.15);
  });
});

describe('a pressure that falls within a pull', () => {
  /** Wide open from 3 to 9 s, but from 5.0 to 5.4 s at `dip` [Pa gauge]; 20 rows a second. */
  const spansWith = (dip: number, fall: number) => {
    const time = Float64Array.from({ length: 240 }, (_, i) => i / 20);
    const isDip = (t: number) => t > 5 && t < 5.4;
    const boost = time.map((t) => (t < 3 || t > 9 ? -6e4 : isDip(t) ? dip : 5e4));
    const engineSpeed = time.map((t) => (250 + 45 * Math.min(6, Math.max(0, t - 3))) * (t > 5 ? fall : 1));
    return boostSpans(boost, engineSpeed, time, [{ from: 0, to: time.length }]) ?? [];
  };

  it('as far as a plate half closed lets it does not part the pull', () => {
    expect(spansWith(-3e4, 1)).toHaveLength(1);
  });

  it('as far as behind a shut plate, or while engine speed falls to another gear, parts it', () => {
    expect(spansWith(-6e4, 1)).toHaveLength(2);
    expect(spansWith(-3e4, 0.8)).toHaveLength(2);
  });
});

describe('a run whose pressure stays short of the others at the same engine speeds', () => {
  /** A pull at 70 kPa from 3 to 9 s, and from 15 to 21 s a run with `other` [Pa gauge] so long after its start. */
  const spansBeside = (other: (since_s: number) => number) => {
    const time = Float64Array.from({ length: 480 }, (_, i) => i / 20);
    const since = (t: number) => (t >= 15 ? t - 15 : t - 3);
    const boost = time.map((t) => (since(t) < 0 || since(t) >= 6 ? -6e4 : t < 15 ? 7e4 : other(since(t))));
    const engineSpeed = time.map((t) => 250 + 45 * Math.min(6, Math.max(0, since(t))));
    return boostSpans(boost, engineSpeed, time, [{ from: 0, to: time.length }]) ?? [];
  };

  it('is part throttle once the charger has spun up', () => {
    expect(spansBeside(() => 5e4)).toHaveLength(1);
    expect(spansBeside(() => 6.5e4)).toHaveLength(2);
  });

  it('is a pull while the charger still spins up', () => {
    expect(spansBeside((since_s) => 1.05e4 * since_s)).toHaveLength(2);
  });
});
