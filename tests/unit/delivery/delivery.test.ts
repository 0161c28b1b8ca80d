import { describe, expect, it } from 'vitest';
import {
  type BucketPoint,
  fitBucketTest,
  fluidArrival,
  lineVolume,
  meteredPoint,
  nozzleFlow,
  operatingPoint,
  pumpFromPoints,
  pumpFromTwo,
  pumpRise,
} from '../../../core/delivery/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { kPa, mL_min, rated, systemWith } from '../../support/delivery.ts';

const codes = (result: { ok: boolean; problems?: readonly { code: string }[] }) =>
  result.ok ? [] : (result.problems ?? []).map((p) => p.code);

describe('a nozzle', () => {
  it('of 500 mL/min at 700 kPa gives 422.6 mL/min at 500 kPa (orifice equation)', () => {
    expect(unwrap(nozzleFlow(rated(500), kPa(500), 998.2)) * 6e7).toBeCloseTo(422.6, 1);
  });

  it('with no pressure left is refused, naming the difference', () => {
    expect(codes(nozzleFlow(rated(500), 0, 998))).toEqual(['delivery/no-pressure-left']);
    expect(codes(nozzleFlow(rated(500), Number.NaN, 998))).toEqual(['delivery/no-pressure-left']);
  });
});

describe('a pump', () => {
  it('on a straight line halves its flow at half its pressure, and slows with its speed', () => {
    const curve = unwrap(pumpFromTwo(1e6, mL_min(1000)));
    expect(pumpRise(curve, mL_min(500))).toBeCloseTo(500e3, 3);
    expect(pumpRise(curve, mL_min(250), 0.5)).toBeCloseTo(250e3, 3);
  });

  it('from points in any order keeps to them', () => {
    const curve = unwrap(
      pumpFromPoints([
        { rise: kPa(400), flow: mL_min(1500) },
        { rise: kPa(1000), flow: mL_min(400) },
        { rise: kPa(700), flow: mL_min(1100) },
      ]),
    );
    expect(pumpRise(curve, mL_min(1100))).toBeCloseTo(kPa(700), 3);
    expect(pumpRise(curve, mL_min(750))).toBeCloseTo(kPa(850), 3);
  });

  it('that delivers more against more pressure is refused', () => {
    expect(
      codes(
        pumpFromPoints([
          { rise: 1e5, flow: 1e-5 },
          { rise: 2e5, flow: 2e-5 },
        ]),
      ),
    ).toEqual(['delivery/pump-curve-rises']);
    expect(codes(pumpFromPoints([{ rise: 1e5, flow: 1e-5 }]))).toEqual(['delivery/pump-unknown']);
    expect(codes(pumpFromTwo(-1e5, 1e-5))).toContain('delivery/pump-number-negative');
  });
});

describe('pump, line and nozzle together', () => {
  it('agree on one flow: what leaves the pump passes line, valve and nozzle', () => {
    const system = systemWith({
      line: { length: 4, bore: 0.003 },
      crackingPressure: kPa(50),
      nozzle_mL_min: 600,
    });
    const point = unwrap(operatingPoint(system));
    expect(pumpRise(system.pump.curve, point.flow) + system.ambientPressure).toBeCloseTo(
      point.pumpPressure,
      3,
    );
    const left = point.pumpPressure - point.lineLoss - kPa(50) - system.manifoldPressure;
    expect(Math.abs(left - point.pressureDifference)).toBeLessThan(2);
    expect(unwrap(nozzleFlow(rated(600), left, 926.9))).toBeCloseTo(point.flow, 9);
  });

  it('at 2 bar of boost a 7 bar pump has lost a seventh of its flow and more (common practice)', () => {
    const held = { ...systemWith().pump, setPressure: kPa(700) };
    const at = (boost: number) => unwrap(operatingPoint(systemWith({ pump: held, boost }))).flow;
    expect(1 - at(kPa(200)) / at(0)).toBeGreaterThan(1 / 7);
  });

  it('a regulator held against the manifold keeps the flow over boost', () => {
    const pump = { ...systemWith().pump, setPressure: kPa(500), reference: 'manifold' as const };
    const at = (boost: number) =>
      unwrap(operatingPoint(systemWith({ pump, boost, nozzle_mL_min: 200 }))).flow;
    expect(at(kPa(150)) / at(kPa(20))).toBeCloseTo(1, 6);
  });

  it('a pump weaker than boost is refused with both pressures', () => {
    const weak = {
      curve: unwrap(pumpFromTwo(kPa(150), mL_min(900))),
      setPressure: null,
      reference: 'ambient' as const,
    };
    const result = operatingPoint(systemWith({ pump: weak, boost: kPa(140), crackingPressure: kPa(20) }));
    if (result.ok) throw new Error('expected a refusal');
    expect(result.problems[0]).toMatchObject({ code: 'delivery/pump-weaker-than-boost' });
    expect(result.problems[0].facts).toMatchObject({
      available: kPa(150),
      needed: kPa(160),
      boost: kPa(140),
    });
  });

  it('a nozzle before the compressor works against ambient and gives more than one in the manifold', () => {
    const inManifold = systemWith({ boost: kPa(200) });
    const before = {
      ...inManifold,
      nozzles: inManifold.nozzles.map((n) => ({ ...n, backPressure: inManifold.ambientPressure })),
    };
    expect(unwrap(operatingPoint(before)).flow).toBeGreaterThan(unwrap(operatingPoint(inManifold)).flow);
  });
});

describe('metering', () => {
  it('valve duty is a straight line, pump speed is not, on or off is one flow', () => {
    const system = systemWith();
    const flow = (metering: 'on-off' | 'pump-speed' | 'valve-duty', s: number) =>
      unwrap(meteredPoint(system, metering, s)).flow;
    expect(flow('valve-duty', 0.5) / flow('valve-duty', 1)).toBeCloseTo(0.5, 9);
    expect(flow('on-off', 0.1)).toBe(flow('on-off', 1));
    // 8 % of 1.2 MPa does not reach the manifold: duty is there, flow is not.
    expect(flow('pump-speed', 0.08)).toBe(0);
    expect(flow('pump-speed', 0.3) / flow('pump-speed', 1)).toBeGreaterThan(0.35);
  });
});

describe('a line that has to fill', () => {
  it('1 m of 4 mm bore holds 12.6 mL, nearly 4 s at 200 mL/min', () => {
    const volume = lineVolume(0.004, 1);
    expect(volume * 1e6).toBeCloseTo(12.566, 2);
    const curve = { boost: [0, 1e5], flow: [mL_min(200), mL_min(200)] };
    const arrival = fluidArrival({ volume, curve, start: 0, peak: 1e5, rise: 1e4 });
    expect(arrival?.delay).toBeCloseTo(3.77, 2);
    expect(arrival?.boost).toBeCloseTo(37.7e3, -2);
  });

  it('on a ramp takes sqrt(2 V (full - start) / (q rise)), worked by hand', () => {
    const curve = { boost: [40e3, 100e3], flow: [0, mL_min(300)] };
    const arrival = fluidArrival({ volume: 2e-6, curve, start: 40e3, peak: 100e3, rise: 50e3 });
    expect(arrival?.delay).toBeCloseTo(Math.sqrt((2 * 2e-6 * 60e3) / (mL_min(300) * 50e3)), 2);
  });

  it('that never fills within a pull says so, and a full one has no delay', () => {
    const curve = { boost: [0, 1], flow: [0, 0] };
    expect(fluidArrival({ volume: 1e-5, curve, start: 0, peak: 1, rise: 1 })).toBeNull();
    expect(fluidArrival({ volume: 0, curve, start: 5, peak: 9, rise: 1 })).toEqual({ delay: 0, boost: 5 });
  });
});

describe('a bucket test', () => {
  const open = systemWith({ boost: 0, nozzle_mL_min: 420 });
  const model = (setting: number) => unwrap(meteredPoint(open, 'pump-speed', setting)).flow;
  const caught = (setting: number, factor: number): BucketPoint => ({
    setting,
    time: 60,
    volume: model(setting) * factor * 60,
    volumeHalf: 4e-6,
    timeHalf: 0.3,
  });

  it('overrides the ratings by what was measured', () => {
    const fit = unwrap(
      fitBucketTest(open, 'pump-speed', [caught(1, 0.9), caught(0.7, 0.9), caught(0.5, 0.9)]),
    );
    expect(fit.correction.factor).toBeCloseTo(0.9, 6);
    expect(fit.points.some((p) => p.isOff)).toBe(false);
    expect(unwrap(meteredPoint(open, 'pump-speed', 0.7, fit.correction)).flow).toBeCloseTo(
      0.9 * model(0.7),
      9,
    );
  });

  it('names the one point that does not fit, and leaves it out', () => {
    const fit = unwrap(
      fitBucketTest(open, 'pump-speed', [
        caught(1, 0.953),
        caught(0.8, 0.957),
        caught(0.6, 0.72),
        caught(0.5, 0.955),
      ]),
    );
    expect(fit.points.map((p) => p.isOff)).toEqual([false, false, true, false]);
    expect(fit.correction.factor).toBeCloseTo(0.955, 2);
    const note = fit.notes.find((n) => n.code === 'delivery/bucket-point-off');
    expect(note?.facts).toMatchObject({ point: 3 });
  });

  it('with two points that disagree can not say which', () => {
    const fit = unwrap(fitBucketTest(open, 'pump-speed', [caught(1, 0.95), caught(0.6, 0.7)]));
    expect(fit.points.some((p) => p.isOff)).toBe(false);
    expect(fit.notes.map((n) => n.code)).toContain('delivery/bucket-points-disagree');
  });

  it('finds the dead setting of a valve', () => {
    const full = unwrap(meteredPoint(open, 'valve-duty', 1)).flow;
    const points = [0.3, 0.5, 0.8, 1].map((s) => ({
      ...caught(1, 1),
      setting: s,
      volume: ((0.97 * full * (s - 0.08)) / 0.92) * 60,
    }));
    const fit = unwrap(fitBucketTest(open, 'valve-duty', points));
    expect(fit.correction.factor).toBeCloseTo(0.97, 6);
    expect(fit.correction.deadSetting).toBeCloseTo(0.08, 6);
    expect(unwrap(meteredPoint(open, 'valve-duty', 0.5, fit.correction)).flow).toBeCloseTo(
      (0.97 * full * 0.42) / 0.92,
      9,
    );
  });

  it('a point where nothing should flow, and no point at all, are refused', () => {
    expect(codes(fitBucketTest(open, 'pump-speed', []))).toEqual(['delivery/bucket-empty']);
    expect(codes(fitBucketTest(open, 'pump-speed', [{ ...caught(1, 1), setting: 0 }]))).toEqual([
      'delivery/bucket-not-measurable',
    ]);
  });

  it('far from the rating says so', () => {
    const fit = unwrap(fitBucketTest(open, 'pump-speed', [caught(1, 0.6), caught(0.7, 0.6)]));
    expect(fit.notes.map((n) => n.code)).toContain('delivery/bucket-far-from-rating');
  });
});
