import { describe, expect, it } from 'vitest';
import { CarSchema, coastDownTime, findRolls, fitCoastDown, rollsIn } from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import { channelFrom, logOf } from '../../../support/drive-generator.ts';
import { normal, seeded } from '../../../support/random.ts';

const truth = { a: 170, b: 1.2, c: 0.4 };
const mass = 1450;
const car = CarSchema.parse({ mass_kg: mass, wheelInertia_kg_m2: 0 });

/** Rolls from 36 m/s for a minute, slope force added to the road load. */
function roll(seed: number, slopeForce = 0, step = 0, noise = 0.03, wind = () => 0) {
  const gauss = normal(seeded(seed));
  const time: number[] = [];
  const speed: number[] = [];
  let v = 36;
  for (let i = 0; i < 60_000; i++) {
    if (i % 100 === 0) {
      const read = v + noise * gauss();
      time.push(i / 1000);
      speed.push(step > 0 ? Math.round(read / step) * step : read);
    }
    v -= ((truth.a + slopeForce + truth.b * v + truth.c * (v + wind()) ** 2) / mass) * 1e-3;
  }
  return { time, speed };
}

function logFrom(...rolls: { time: number[]; speed: number[] }[]) {
  const time = rolls.flatMap((r, k) => r.time.map((t) => t + 100 * k));
  const speed = rolls.flatMap((r) => r.speed);
  return logOf(Float64Array.from(time), [
    channelFrom('Speed', 'vehicleSpeed', 'm/s', Float64Array.from(speed)),
  ]);
}

describe('coast-down', () => {
  it('gives the coefficients back with an interval that holds them, in 9 of 10 rolls or more', () => {
    let inside = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const r = roll(seed);
      const found = unwrap(fitCoastDown(rollsIn(logFrom(r), [{ from: 0, to: r.time.length }]), car));
      const at = found.forceAt(25);
      const real = truth.a + 25 * truth.b + 625 * truth.c;
      expect(Math.abs(at.force / real - 1)).toBeLessThan(0.02);
      if (Math.abs(at.force - real) <= at.half && Math.abs(found.c - truth.c) <= found.half.c) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(18);
  });

  it('reads speed in steps of 1 km/h', () => {
    const r = roll(3, 0, 1 / 3.6, 0);
    const found = unwrap(fitCoastDown(rollsIn(logFrom(r), [{ from: 0, to: r.time.length }]), car));
    for (const v of [15, 25, 35]) {
      const real = truth.a + v * truth.b + v * v * truth.c;
      expect(Math.abs(found.forceAt(v).force / real - 1)).toBeLessThan(0.02);
    }
  });

  it('rolls in both directions cancel a slope', () => {
    const out = roll(5, 90);
    const back = roll(6, -90);
    const n = out.time.length;
    const both = [
      { from: 0, to: n, way: 1 },
      { from: n, to: 2 * n, way: -1 },
    ] as const;
    const log = logFrom(out, back);
    const found = unwrap(fitCoastDown(rollsIn(log, both), car));
    const one = unwrap(fitCoastDown(rollsIn(log, [{ from: 0, to: n }]), car));
    const real = truth.a + 25 * truth.b + 625 * truth.c;
    expect(Math.abs(found.forceAt(25).force / real - 1)).toBeLessThan(0.003);
    // Slope and wind trade a little for each other.
    expect(Math.abs((found.perWay?.s ?? 0) - 90)).toBeLessThan(3);
    expect(one.perWay).toBeNull();
    expect(one.forceAt(25).force - real).toBeGreaterThan(70);
    expect(found.rolls).toBe(2);
  });

  it('rolls in both directions cancel a steady wind', () => {
    const rolls = ([1, -1] as const).map((way) => roll(way + 8, 0, 0, 0.03, () => 3 * way));
    const n = rolls.map((r) => r.time.length) as [number, number];
    const windows = [
      { from: 0, to: n[0], way: 1 },
      { from: n[0], to: n[0] + n[1], way: -1 },
    ] as const;
    const found = unwrap(fitCoastDown(rollsIn(logFrom(...rolls), windows), car));
    for (const v of [12, 25, 34])
      expect(Math.abs(found.forceAt(v).force / (truth.a + truth.b * v + truth.c * v * v) - 1)).toBeLessThan(
        0.005,
      );
  });

  it('has an interval that holds the force in gusts too', () => {
    let inside = 0;
    const days = 40;
    for (let day = 0; day < days; day++) {
      const gauss = normal(seeded(900 + day));
      let gust = 0;
      const wind = () => {
        gust += (-gust * 1e-3) / 4 + Math.sqrt(2e-3 / 4) * gauss();
        return gust;
      };
      const rolls = [roll(2 * day + 1, 0, 0, 0.03, wind), roll(2 * day + 2, 0, 0, 0.03, wind)];
      const n = rolls[0]?.time.length ?? 0;
      const windows = [
        { from: 0, to: n, way: 1 },
        { from: n, to: 2 * n, way: -1 },
      ] as const;
      const at = unwrap(fitCoastDown(rollsIn(logFrom(...rolls), windows), car)).forceAt(22);
      if (Math.abs(at.force - (truth.a + 22 * truth.b + 484 * truth.c)) <= at.half) inside++;
    }
    expect(inside / days).toBeGreaterThan(0.85);
  });

  it('rolls are found where the car rolls with the engine at idle, not where it brakes or is in gear', () => {
    const r = roll(4);
    const braking = { time: r.time, speed: r.time.map((t) => Math.max(0, 36 - 3 * t)) };
    const parts = [r, braking, r];
    const log = logFrom(...parts);
    const idling = log.time.map((t) => (t > 150 ? 250 : 85));
    expect(findRolls(log)).toHaveLength(2);
    const engine = channelFrom('rpm', 'engineSpeed', 'rpm', idling);
    const [found, ...more] = findRolls({ ...log, channels: [...log.channels, engine] });
    expect(more).toEqual([]);
    expect(found?.from).toBeLessThan(10);
    expect(found?.to).toBeGreaterThan(r.time.length - 20);
  });

  it('leaves the driving before and behind a roll out of it, wherever the half seconds fall', () => {
    for (const lead of [0, 0.1, 0.2, 0.3, 0.4]) {
      const driven = { time: [] as number[], speed: [] as number[] };
      const rolls = [roll(3), roll(4)];
      const log = logFrom(driven, ...rolls);
      // Held at 20 m/s right up to each roll and right after it.
      const held = 50 + Math.round(10 * lead);
      const speed = rolls.flatMap((r) => [...Array(held).fill(20), ...r.speed]);
      const time = Float64Array.from(speed, (_, i) => i / 10);
      const [channel] = log.channels;
      const found = findRolls(
        logOf(time, [channelFrom(channel?.column ?? '', 'vehicleSpeed', 'm/s', Float64Array.from(speed))]),
      );
      expect(found).toHaveLength(2);
      for (const [n, { from, to }] of found.entries()) {
        const starts = n * (held + 600) + held;
        expect(from).toBeGreaterThanOrEqual(starts);
        expect(to).toBeLessThanOrEqual(starts + 600);
        // A second at the end goes as well: a foot may have been on the brake.
        expect(to - from).toBeGreaterThan(570);
      }
    }
  });

  it('sees no roll in rows that are years apart, and ends', () => {
    const time = Float64Array.from({ length: 20 }, (_, i) => 1e8 * i);
    const speed = time.map((_, i) => 40 - i);
    expect(findRolls(logOf(time, [channelFrom('speed', 'vehicleSpeed', 'm/s', speed)]))).toEqual([]);
  });

  it('time to roll down is the integral: constant force is v over a', () => {
    expect(coastDownTime({ a: 100, b: 0, c: 0 }, 1000, 20, 10)).toBeCloseTo(100, 9);
    // Force growing in proportion to speed: M / b ln(v1 / v2).
    expect(coastDownTime({ a: 0, b: 5, c: 0 }, 1000, 20, 10)).toBeCloseTo(200 * Math.log(2), 6);
  });

  it('refuses what is no coast-down, saying why', () => {
    const up = { time: [...Array(50).keys()], speed: [...Array(50).keys()].map((i) => 10 + i / 2) };
    const short = { time: [...Array(50).keys()], speed: [...Array(50).keys()].map((i) => 10 - i / 20) };
    const codeOf = (r: { time: number[]; speed: number[] }) => {
      const found = fitCoastDown(rollsIn(logFrom(r), [{ from: 0, to: r.time.length }]), car);
      return found.ok ? 'ok' : found.problems[0].code;
    };
    expect(codeOf(up)).toBe('power/coast-down-not-slowing');
    expect(codeOf(short)).toBe('power/coast-down-too-short');
    // A slope of 1 % one way and the other, both said to be the same way.
    const [out, back] = [roll(5, 142), roll(6, -142)];
    const n = out.time.length;
    const crossed = fitCoastDown(
      rollsIn(logFrom(out, back), [
        { from: 0, to: n },
        { from: n, to: 2 * n },
      ]),
      car,
    );
    expect(!crossed.ok && crossed.problems[0].code).toBe('power/coast-down-no-fit');
    const none = fitCoastDown(rollsIn(logOf(new Float64Array(0), []), [{ from: 0, to: 0 }]), car);
    expect(!none.ok && none.problems[0].code).toBe('power/no-speed');
  });
});
