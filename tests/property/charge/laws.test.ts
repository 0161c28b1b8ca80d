import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airDensity,
  type ChargePath,
  chargeAlong,
  evaporate,
  type HeadroomQuestion,
  type KnockState,
  knockHeadroom,
  knockIntegral,
  massOf,
  partsOf,
  sprayPlaces,
} from '../../../core/charge/index.ts';
import { type Mix, mixByMass } from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const anyMix: fc.Arbitrary<Mix> = fc
  .tuple(share, share)
  .map(([a, b]) => unwrap(mixByMass({ methanol: a * b, ethanol: a * (1 - b) })));
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const path = (change: Partial<ChargePath> = {}): ChargePath => ({
  ambient: { pressure: 100e3, temperature: celsius(20), relativeHumidity: 0.5 },
  manifoldPressure: 200e3,
  compressor: { efficiency: 0.7 },
  cooler: { effectiveness: 0.75, coolant: null, loss: 8e3 },
  spray: null,
  airFlow: 0.2,
  ...change,
});
const sprayOf = (mix: Mix, fluidOverAir: number, place: (typeof sprayPlaces)[number] = 'after-cooler') => ({
  mix,
  fluidOverAir,
  temperature: celsius(20),
  place,
  dropDiameter: null,
  way: null,
});

describe('evaporation', () => {
  const state = fc.record({
    mix: anyMix,
    fluid: between(0, 0.08),
    air_C: between(10, 130),
    pressure: between(80e3, 320e3),
    taking: share,
  });
  it('keeps every kilogram: what leaves the drops is in the air', () => {
    fc.assert(
      fc.property(state, ({ mix, fluid, air_C, pressure, taking }) => {
        const air = { pressure, temperature: celsius(air_C), vapour: partsOf(mix, 0.001) };
        const liquid = { parts: partsOf(mix, fluid), temperature: celsius(20) };
        const after = evaporate(air, liquid, taking);
        fc.pre(after.ok);
        const end = unwrap(after);
        for (const id of ['water', 'methanol', 'ethanol'] as const)
          expect(end.air.vapour[id] + end.liquid.parts[id]).toBeCloseTo(air.vapour[id] + liquid.parts[id], 9);
      }),
      { numRuns: 150, seed: 11 },
    );
  });
  it('cools more with more fluid until the air is full, and never warms', () => {
    fc.assert(
      fc.property(state, ({ mix, fluid, air_C, pressure }) => {
        const air = { pressure, temperature: celsius(air_C), vapour: partsOf(mix, 0) };
        const at = (mass: number) =>
          evaporate(air, { parts: partsOf(mix, mass), temperature: celsius(Math.min(20, air_C)) });
        const [little, more] = [at(fluid), at(fluid * 1.3)];
        // Past full, surplus fluid is warmer than the wet charge and takes a little of the cooling back.
        fc.pre(little.ok && more.ok && !unwrap(more).isFull);
        expect(unwrap(more).air.temperature).toBeLessThanOrEqual(unwrap(little).air.temperature + 1e-4);
        expect(unwrap(little).air.temperature).toBeLessThanOrEqual(air.temperature + 1e-6);
      }),
      { numRuns: 150, seed: 12 },
    );
  });
  it('holds each part at or under its own vapour pressure, so that water stops where the air is full', () => {
    const mix = unwrap(mixByMass({}));
    const air = { pressure: 200e3, temperature: celsius(40), vapour: partsOf(mix, 0) };
    const some = unwrap(evaporate(air, { parts: partsOf(mix, 0.05), temperature: celsius(20) }));
    const twice = unwrap(evaporate(air, { parts: partsOf(mix, 0.1), temperature: celsius(20) }));
    expect(some.isFull && twice.isFull).toBe(true);
    expect(massOf(twice.air.vapour)).toBeLessThan(1.02 * massOf(some.air.vapour));
  });
});

describe('the way of the charge', () => {
  it.each(sprayPlaces)(
    'spray %s: colder and denser than without, more so with more, every station told',
    (place) => {
      const mix = unwrap(mixByMass({ methanol: 0.44 }));
      const dry = unwrap(chargeAlong(path()));
      let last = dry.port;
      for (const fluid of [0.005, 0.01, 0.02]) {
        const wet = unwrap(chargeAlong(path({ spray: sprayOf(mix, fluid, place) })));
        expect(wet.port.air.temperature).toBeLessThan(last.air.temperature);
        expect(wet.states.map((s) => s.station).sort()).toEqual(
          ['ambient', 'compressor', 'cooler', 'port', 'spray'].sort(),
        );
        last = wet.port;
      }
      expect(last.density).toBeGreaterThan(dry.port.density);
    },
  );
  it('is hotter for more pressure, a worse compressor, a worse cooler, a hotter day', () => {
    fc.assert(
      fc.property(
        between(110e3, 280e3),
        between(0.5, 0.8),
        between(0.3, 0.9),
        between(-10, 45),
        (manifoldPressure, efficiency, effectiveness, day_C) => {
          const at = (p: number, e: number, c: number, t: number) =>
            unwrap(
              chargeAlong(
                path({
                  ambient: { pressure: 100e3, temperature: celsius(t), relativeHumidity: 0.4 },
                  manifoldPressure: p,
                  compressor: { efficiency: e },
                  cooler: { effectiveness: c, coolant: null, loss: 8e3 },
                }),
              ),
            ).port.air.temperature;
          const here = at(manifoldPressure, efficiency, effectiveness, day_C);
          expect(at(manifoldPressure * 1.1, efficiency, effectiveness, day_C)).toBeGreaterThan(here);
          expect(at(manifoldPressure, efficiency * 0.9, effectiveness, day_C)).toBeGreaterThan(here);
          expect(at(manifoldPressure, efficiency, effectiveness * 0.9, day_C)).toBeGreaterThan(here);
          expect(at(manifoldPressure, efficiency, effectiveness, day_C + 5)).toBeGreaterThan(here);
        },
      ),
      { numRuns: 60, seed: 13 },
    );
  });
  it('is less dense where warmer, at one pressure', () => {
    const vapour = { water: 0.005, methanol: 0, ethanol: 0 };
    expect(airDensity({ pressure: 2e5, temperature: 310, vapour })).toBeGreaterThan(
      airDensity({ pressure: 2e5, temperature: 330, vapour }),
    );
  });
});

describe('knock integral', () => {
  const degree = Math.PI / 180;
  const state: fc.Arbitrary<KnockState> = fc.record({
    crank: fc.record({ compressionRatio: between(7, 12), rodToCrank: between(3, 4) }),
    closing_rad: between(-140, -110).map((d) => d * degree),
    pressure: between(120e3, 280e3),
    temperature: between(300, 400),
    engineSpeed_rad_s: between(200, 700),
    octane: between(85, 100),
    spark_rad: between(0, 25).map((d) => d * degree),
    burnDuration_rad: between(45, 70).map((d) => d * degree),
    heat: between(15, 22),
    exponent: between(1.28, 1.34),
  });
  const grows: readonly [string, (s: KnockState) => KnockState][] = [
    ['pressure', (s) => ({ ...s, pressure: s.pressure * 1.05 })],
    ['temperature', (s) => ({ ...s, temperature: s.temperature + 5 })],
    [
      'compression ratio',
      (s) => ({ ...s, crank: { ...s.crank, compressionRatio: s.crank.compressionRatio + 0.3 } }),
    ],
    ['spark', (s) => ({ ...s, spark_rad: (s.spark_rad ?? 0) + degree })],
    ['heat', (s) => ({ ...s, heat: s.heat * 1.05 })],
    ['exponent', (s) => ({ ...s, exponent: s.exponent + 0.01 })],
    ['octane, falling', (s) => ({ ...s, octane: s.octane - 1 })],
    ['engine speed, falling', (s) => ({ ...s, engineSpeed_rad_s: s.engineSpeed_rad_s * 0.95 })],
  ];
  it.each(grows)('grows with %s', (_, change) => {
    fc.assert(
      fc.property(state, (s) => {
        expect(knockIntegral(change(s))).toBeGreaterThan(knockIntegral(s));
      }),
      { numRuns: 60, seed: 14 },
    );
  });
});

describe('knock headroom', () => {
  const degree = Math.PI / 180;
  const mix = unwrap(mixByMass({ methanol: 0.44 }));
  const question = (fluid: number, day_C = 20, octane = 98): HeadroomQuestion => ({
    engine: {
      crank: { compressionRatio: 9.8, rodToCrank: 3.14 },
      intakeClosing_rad: 50 * degree,
      octane,
      lambda: 0.82,
    },
    engineSpeed_rad_s: 550,
    shown: { path: path(), spark_rad: 12 * degree, boost: 100e3, isKnockLimited: false },
    asked: (manifoldPressure) =>
      path({
        manifoldPressure,
        ambient: { pressure: 100e3, temperature: celsius(day_C), relativeHumidity: 0.5 },
        spray: sprayOf(mix, fluid),
      }),
  });
  it('is nothing for the shown charge itself', () => {
    const none = unwrap(knockHeadroom(question(0)));
    for (const end of [...none.spark_rad]) expect(Math.abs(end)).toBeLessThan(0.02 * degree);
    for (const end of [...none.boost]) expect(Math.abs(end)).toBeLessThan(100);
  });
  it('grows with fluid, shrinks with a hotter day below nothing, and is a range that never turns round', () => {
    let [spark, boost] = [0, 0];
    for (const fluid of [0.006, 0.011, 0.016]) {
      const room = unwrap(knockHeadroom(question(fluid)));
      expect(room.spark_rad[0]).toBeLessThanOrEqual(room.spark_rad[1]);
      expect(room.boost[0]).toBeLessThanOrEqual(room.boost[1]);
      expect(room.spark_rad[1]).toBeGreaterThan(spark);
      expect(room.boost[1]).toBeGreaterThan(boost);
      [spark, boost] = [room.spark_rad[1], room.boost[1]];
    }
    const hot = unwrap(knockHeadroom(question(0, 38)));
    expect(hot.spark_rad[1]).toBeLessThan(0);
    expect(hot.boost[1]).toBeLessThan(0);
  });
});
