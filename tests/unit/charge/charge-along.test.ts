import { describe, expect, it } from 'vitest';
import {
  ambientAir,
  type ChargePath,
  chargeAlong,
  compressorOutlet,
  cool,
  evaporate,
  knockHeadroom,
} from '../../../core/charge/index.ts';
import { mixPoured, pure } from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';

const half = unwrap(mixPoured({ methanol: 0.5 }));
const day = { pressure: 100e3, temperature: celsius(25), relativeHumidity: 0.5 };
const path: ChargePath = {
  ambient: day,
  manifoldPressure: 210e3,
  compressor: { efficiency: 0.7 },
  cooler: null,
  spray: {
    mix: half,
    fluidOverAir: 0.012,
    temperature: celsius(20),
    place: 'after-cooler',
    dropDiameter: 10e-6,
    way: { length: 2, bore: 0.06 },
  },
  airFlow: 0.2,
};
const codes = (result: { ok: boolean; problems?: readonly { code: string }[] }) =>
  result.ok ? [] : (result.problems ?? []).map((p) => p.code);

describe('chargeAlong', () => {
  it('cools 13 kg/min of hot air by about 20 K where 15 % fluid all evaporates (field sizes)', () => {
    // 156 g/min of half and half into 13 kg/min of air: 4.6 kW, about 20 C (common practice).
    const along = unwrap(chargeAlong(path));
    const before = along.states.find((s) => s.station === 'spray')?.air.temperature ?? Number.NaN;
    expect(along.port.evaporatedShare).toBeGreaterThan(0.98);
    expect(before - along.port.air.temperature).toBeGreaterThan(18);
    expect(before - along.port.air.temperature).toBeLessThan(26);
  });
  it('lets large drops pass the valve and says so', () => {
    const spray = path.spray && { ...path.spray, dropDiameter: 150e-6, way: { length: 0.3, bore: 0.06 } };
    const along = unwrap(chargeAlong({ ...path, spray }));
    expect(along.port.evaporatedShare).toBeLessThan(0.2);
    expect(along.notes.map((n) => n.code)).toEqual(
      expect.arrayContaining(['charge/drops-outlive-the-way', 'charge/sensor-reads-wet']),
    );
  });
  it('tells when the air is full: fine water drops in cool charge', () => {
    const spray = path.spray && { ...path.spray, mix: pure('water'), fluidOverAir: 0.05 };
    const cooler = { effectiveness: 0.95, coolant: null, loss: 0 };
    const along = unwrap(chargeAlong({ ...path, spray, cooler }));
    expect(along.notes.map((n) => n.code)).toContain('charge/air-is-full');
    expect(along.port.evaporatedShare).toBeLessThan(0.5);
  });
  it('counts the humidity of the day: damp air takes up less', () => {
    const spray = path.spray && { ...path.spray, mix: pure('water'), fluidOverAir: 0.05 };
    const cooler = { effectiveness: 0.95, coolant: null, loss: 0 };
    const at = (relativeHumidity: number) =>
      unwrap(chargeAlong({ ...path, spray, cooler, ambient: { ...day, relativeHumidity } })).port;
    expect(at(0.9).air.temperature).toBeGreaterThan(at(0.1).air.temperature + 2);
  });
  it('names what rests on practice where drops and way are unknown', () => {
    const spray = path.spray && { ...path.spray, dropDiameter: null, way: null };
    const seen = unwrap(chargeAlong({ ...path, spray })).notes.map((n) => n.code);
    expect(seen).toEqual(expect.arrayContaining(['charge/drop-size-practice', 'charge/way-unknown']));
  });
  it('says where every number comes from', () => {
    const { explanations } = unwrap(chargeAlong(path));
    expect(explanations.map((e) => e.id)).toEqual([
      'charge/compressor',
      'charge/density',
      'charge/evaporation',
      'charge/drops',
    ]);
    for (const e of explanations) expect(e.source.length * e.inputs.length).toBeGreaterThan(0);
  });
});

describe('bad input', () => {
  it.each([
    ['charge/pressure-not-positive', ambientAir({ ...day, pressure: 0 })],
    ['charge/humidity-outside', ambientAir({ ...day, relativeHumidity: 1.2 })],
    ['charge/pressure-ratio-below-one', chargeAlong({ ...path, manifoldPressure: 80e3 })],
    ['charge/share-outside', chargeAlong({ ...path, compressor: { efficiency: 0 } })],
    ['charge/share-outside', cool(unwrap(ambientAir(day)), { effectiveness: 1.2, coolant: 300, loss: 0 })],
    [
      'charge/loss-above-pressure',
      cool(unwrap(ambientAir(day)), { effectiveness: 0.5, coolant: 300, loss: 2e5 }),
    ],
    [
      'charge/pressure-not-positive',
      compressorOutlet({ inletTemperature: 300, inletPressure: 0, outletPressure: 1e5, efficiency: 0.7 }),
    ],
    [
      'charge/colder-than-known',
      evaporate(
        { pressure: 80e3, temperature: celsius(-15), vapour: { water: 0, methanol: 0, ethanol: 0 } },
        { parts: { water: 0, methanol: 0.5, ethanol: 0 }, temperature: celsius(-18) },
      ),
    ],
    [
      'charge/spark-outside',
      knockHeadroom({
        engine: {
          crank: { compressionRatio: 10, rodToCrank: 3.2 },
          intakeClosing_rad: 0.9,
          octane: 98,
          lambda: 0.82,
        },
        engineSpeed_rad_s: 500,
        shown: { path, spark_rad: 2, boost: 1e5, isKnockLimited: false },
        asked: () => path,
      }),
    ],
  ])('%s', (code, result) => {
    expect(codes(result)).toContain(code);
  });
});
