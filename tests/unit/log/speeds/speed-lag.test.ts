import { describe, expect, it } from 'vitest';
import { speedLag } from '../../../../core/log/speeds/speed-lag.ts';
import { normal, seeded } from '../../../support/random.ts';

const rate = 20;
/** Rolling and air over mass of an invented car [m/s²]. */
const load = (v: number) => 0.15 + 0.00035 * v * v;
/** A pull from 4 to 9 s in one gear, a cruise before it, a lift after it: acceleration and speed at 1 ms. */
function speeds(top: number) {
  const v: number[] = [];
  const a: number[] = [];
  let now = 12;
  for (let i = 0; i < 13_000; i++) {
    const t = i / 1000;
    // A foot and a manifold take a quarter of a second.
    const foot = Math.min(1, Math.max(0, (t - 4) / 0.25)) * Math.min(1, Math.max(0, (9.25 - t) / 0.25));
    const acceleration = foot * top * (1 - 0.07 * (t - 4)) + (1 - foot) * (t < 6 ? 0.2 : -0.8);
    v.push(now);
    a.push(acceleration);
    now += acceleration / 1000;
  }
  return { v, a };
}

type Made = {
  top: number;
  seed: number;
  lag?: number;
  smoothed?: number;
  isClutchOpen?: boolean;
  slip?: number;
};

function lagOf({ top, seed, lag = 0, smoothed = 0, isClutchOpen = false, slip = 0.02 }: Made) {
  const gauss = normal(seeded(seed));
  const { v, a } = speeds(top);
  const logged: number[] = [];
  let level = v[0] as number;
  for (let i = 0; i < v.length; i++) {
    level += (smoothed > 0 ? 1 - Math.exp(-0.001 / smoothed) : 1) * ((v[i] as number) - level);
    logged.push(level);
  }
  const time = Float64Array.from({ length: 12.9 * rate }, (_, i) => i / rate);
  const ms = (t: number) => Math.max(0, Math.round(1000 * t));
  const engine = time.map((t) => {
    if (isClutchOpen && t >= 9) return 95;
    // Tyres slip with the force at the road, also where the engine brakes.
    const road = v[ms(t)] as number;
    const share = ((a[ms(t)] as number) + load(road)) / (top + load(12.8));
    return 15 * road * (1 + slip * share) + 0.5 * gauss();
  });
  const speed = time.map((t) => Math.round(((logged[ms(t - lag)] as number) + 0.02 * gauss()) * 36) / 36);
  return speedLag(time, engine, speed, { from: 4 * rate, to: 9 * rate }, { from: 0, to: time.length });
}

/** A hundredth more slip than usual looks like this lag in the middle of the pull, and a reading is timed to a row. */
const within = (top: number) => 0.01 / ((0.82 * top) / (12.8 + 2.3 * top)) + 0.04;

describe.each([1.5, 3, 5])('a pull of %d m/s²', (top) => {
  it.each([0, 0.03, 0.06])('whose speed is %d s late, as any wheel sensor, is left alone', (lag) => {
    for (const slip of [0.01, 0.02, 0.03])
      for (const seed of [1, 2, 3])
        expect(lagOf({ top, seed, lag, slip })).toEqual({ lag: 0, isSmoothed: false });
  });
  it.each([0.2, 0.3, 0.5, 0.9])(
    'whose speed is put off by %d s says so, unless slip could do as much',
    (lag) => {
      // Five hundredths of speed at the onset: five times what is not known of slip.
      const mayBeSlip = (lag * top) / 12.8 < 0.05;
      for (const seed of [1, 2, 3])
        for (const slip of [0.01, 0.03]) {
          const found = lagOf({ top, seed, lag, slip }).lag;
          if (!(mayBeSlip && found === 0))
            expect(Math.abs(found - lag)).toBeLessThan(within(top) + 0.15 * lag);
        }
    },
  );
});

it('a speed that runs ahead of engine speed is told with its sign', () => {
  expect(lagOf({ top: 4, seed: 4, lag: -0.2 }).lag).toBeLessThan(-0.12);
});

it.each([0.3, 0.5, 0.8])('a speed smoothed over %d s is told from one that is put off', (smoothed) => {
  for (const seed of [1, 2, 3]) {
    const found = lagOf({ top: 4, seed, smoothed });
    expect(found.isSmoothed).toBe(true);
    expect(Math.abs(found.lag - smoothed)).toBeLessThan(within(4));
    expect(lagOf({ top: 4, seed, lag: smoothed }).isSmoothed).toBe(false);
  }
});

it('the open clutch after a pull does not pass for a lag, and does not hide one', () => {
  expect(lagOf({ top: 4, seed: 5, isClutchOpen: true })).toEqual({ lag: 0, isSmoothed: false });
  expect(Math.abs(lagOf({ top: 4, seed: 5, isClutchOpen: true, lag: 0.3 }).lag - 0.3)).toBeLessThan(0.1);
});

it('a speed that never moves shows no lag', () => {
  const time = Float64Array.from({ length: 200 }, (_, i) => i / rate);
  const engine = time.map((t) => 200 + 30 * t);
  const whole = { from: 0, to: time.length };
  const none = { lag: 0, isSmoothed: false };
  expect(
    speedLag(
      time,
      engine,
      time.map(() => 0),
      { from: 60, to: 120 },
      whole,
    ),
  ).toEqual(none);
  expect(
    speedLag(
      time,
      engine,
      time.map(() => Number.NaN),
      { from: 60, to: 120 },
      whole,
    ),
  ).toEqual(none);
  expect(
    speedLag(
      time,
      engine,
      time.map(() => 20),
      { from: 60, to: 120 },
      whole,
    ),
  ).toEqual(none);
});
