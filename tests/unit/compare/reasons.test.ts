import { describe, expect, it } from 'vitest';
import { declareChange, judge, type PullEvidence } from '../../../core/compare/index.ts';
import { ConditionsSchema } from '../../../core/power/index.ts';
import type { NoteCode } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText } from '../../../core/words/index.ts';
import { inventDay, quietDay } from '../../support/invented-session.ts';

const degree = Math.PI / 180;
const rpm = Math.PI / 30;

const [before, after] = inventDay({
  ...quietDay,
  entries: [
    { pulls: 4, share: 0 },
    { pulls: 4, share: 0.03, moved: { spark: degree } },
  ],
}).map((e) => e.pulls) as [PullEvidence[], PullEvidence[]];
const declared = declareChange('spark', { size: degree });

type Change = (pull: PullEvidence, place: number) => PullEvidence;
const same: Change = (p) => p;
const verdictOf = (onBefore: Change, onAfter: Change) =>
  judge({ before: before.map(onBefore), after: after.map(onAfter), declared });
const reasonsOf = (onBefore: Change, onAfter: Change) =>
  verdictOf(onBefore, onAfter).reasons.map((r) => r.code);
const withCurve =
  (
    quantity: 'vehicleSpeed' | 'limiterActive' | 'tractionControl' | 'ambientTemperature',
    of: (w: number) => number,
  ): Change =>
  (p) => ({ ...p, curves: { ...p.curves, [quantity]: p.power.engineSpeed_rad_s.map(of) } });
const withAir =
  (ambient_C: number, barometer_kPa: number): Change =>
  (p) => ({ ...p, conditions: ConditionsSchema.parse({ ambient_C, barometer_kPa }) });

const corrected =
  (change: Change): Change =>
  (p, place) => {
    const pull = change(p, place);
    return { ...pull, power: { ...pull.power, correction: { standard: 'ISO 1585', factor: 1 } } };
  };
/** Power known between two engine speeds alone [rpm]. */
const only =
  (from: number, to: number): Change =>
  (p) => ({
    ...p,
    power: {
      ...p.power,
      wheelPower: p.power.wheelPower.map((v, i) => {
        const at = (p.power.engineSpeed_rad_s[i] as number) / rpm;
        return at >= from && at <= to ? v : Number.NaN;
      }),
    },
  });

it('nothing of this is said of a clean step', () => {
  expect(verdictOf(same, same)).toMatchObject({ kind: 'gain', reasons: [] });
});

describe('the same pulls are refused', () => {
  it.each<[NoteCode, Change, Change]>([
    ['compare/other-mass', same, (p) => ({ ...p, mass_kg: 1475 })],
    [
      'compare/other-rolling',
      withCurve('vehicleSpeed', (w) => w / 17),
      withCurve('vehicleSpeed', (w) => w / 17.4),
    ],
    [
      'compare/other-correction',
      same,
      (p) => ({ ...p, power: { ...p.power, correction: { standard: 'ISO 1585', factor: 1 } } }),
    ],
    ['compare/weather-apart', withAir(12, 101), withAir(31, 99)],
    [
      'compare/weather-apart',
      withCurve('ambientTemperature', () => 285),
      withCurve('ambientTemperature', () => 303),
    ],
    ['compare/limiter', same, withCurve('limiterActive', (w) => (w > 4000 * rpm && w < 4600 * rpm ? 1 : 0))],
    ['compare/intervention', same, withCurve('tractionControl', (w) => (w < 3600 * rpm ? 1 : 0))],
    [
      'compare/knock-events',
      (p) => ({ ...p, events: { ...p.events, knockEvents: 0 } }),
      (p) => ({ ...p, events: { ...p.events, knockEvents: 3 } }),
    ],
    ['compare/weather-beyond', corrected(withAir(5, 102)), corrected(withAir(34, 97))],
    [
      'compare/wheel-spin',
      same,
      (p) => ({ ...p, flags: [{ code: 'log/pull-wheel-spin', facts: { time_s: 4, excess: 0.1 } }] }),
    ],
    ['compare/no-common-band', only(2400, 3900), only(4300, 6600)],
    ['compare/other-gear', same, (p) => ({ ...p, gear: 4 })],
    [
      'compare/intake-apart',
      same,
      (p) => ({ ...p, curves: { ...p.curves, intakeTemperature: p.power.engineSpeed_rad_s.map(() => 330) } }),
    ],
  ])('%s', (code, onBefore, onAfter) => {
    expect(reasonsOf(onBefore, onAfter)).toContain(code);
  });
});

describe('one pull in trouble is left out and named, and the rest is judged', () => {
  const first =
    (change: Change): Change =>
    (p, place) =>
      place === 0 ? change(p, place) : p;

  it('one that knocked', () => {
    const verdict = verdictOf(
      same,
      first((p) => ({
        ...p,
        curves: { ...p.curves, knockRetard: p.power.engineSpeed_rad_s.map(() => 2 * degree) },
      })),
    );
    expect(verdict.pullsAfter).toBe(3);
    expect(verdict.remarks.map((r) => r.code)).toContain('compare/left-out-knock');
    expect(verdict.kind).toBe('gain');
  });

  it('one whose wheels spun', () => {
    const road = withCurve('vehicleSpeed', (w) => w / 17);
    const spun = withCurve('vehicleSpeed', (w) => (w < 3200 * rpm ? w / 18.5 : w / 17));
    const verdict = verdictOf(road, (p, place) => (place === 0 ? spun(p, place) : road(p, place)));
    expect(verdict.remarks.map((r) => r.code)).toContain('compare/left-out-spin');
    expect(verdict.kind).toBe('gain');
  });

  it('a limiter at the very top only ends the band', () => {
    const verdict = verdictOf(
      same,
      withCurve('limiterActive', (w) => (w > 6000 * rpm ? 1 : 0)),
    );
    expect(verdict.kind).toBe('gain');
    expect(verdict.band_rad_s?.[1]).toBeLessThanOrEqual(6000 * rpm);
  });

  it('a pull with a hole in its power', () => {
    const holed: Change = (p) => ({
      ...p,
      power: {
        ...p.power,
        wheelPower: p.power.wheelPower.map((v, i) => (i >= 88 && i <= 92 ? Number.NaN : v)),
      },
    });
    const verdict = verdictOf(first(holed), same);
    expect(verdict.pullsBefore).toBe(3);
    expect(verdict.remarks.map((r) => r.code)).toContain('compare/left-out-no-power');
    expect(reasonsOf(holed, same)).toEqual(['compare/no-pulls']);
  });
});

it('weather that a correction can carry widens the interval and is said', () => {
  const still = verdictOf(withAir(20, 100), withAir(20, 100));
  const moved = verdictOf(withAir(20, 100), withAir(20, 99.2));
  const half = (v: typeof still) => ((v.interval95?.[1] ?? 0) - (v.interval95?.[0] ?? 0)) / 2;
  expect(moved.remarks.map((r) => r.code)).toContain('compare/weather-widened');
  expect(half(moved)).toBeGreaterThan(half(still));
});

it('out and back on both sides is averaged, and a slope does no harm', () => {
  const sloped: Change = (p, place) => ({
    ...p,
    direction: place % 2 === 0 ? 1 : -1,
    power: { ...p.power, wheelPower: p.power.wheelPower.map((v) => v * (place % 2 === 0 ? 0.96 : 1.04)) },
  });
  const verdict = verdictOf(sloped, sloped);
  expect(verdict.remarks.map((r) => r.code)).toContain('compare/directions-averaged');
  expect(verdict.kind).toBe('gain');
});

it('out and back are told from the positions where nobody said which', () => {
  const heading =
    (first: number): Change =>
    (p, place) => ({ ...p, heading_rad: place % 2 === 0 ? first : first + Math.PI });
  expect(verdictOf(heading(1), heading(1)).remarks.map((r) => r.code)).toContain(
    'compare/directions-averaged',
  );
  expect(
    reasonsOf(
      (p) => ({ ...p, heading_rad: 1 }),
      (p) => ({ ...p, heading_rad: 1 + Math.PI }),
    ),
  ).toContain('compare/other-direction');
});

it('a declared degree that retard took in part is said where it shows', () => {
  const verdict = verdictOf(same, (p) => ({
    ...p,
    curves: {
      ...p.curves,
      sparkAdvance: (p.curves.sparkAdvance as Float64Array).map((v) => v - 0.6 * degree),
      knockRetard: p.power.engineSpeed_rad_s.map(() => 0.6 * degree),
    },
  }));
  expect(verdict.kind).toBe('not-comparable');
  const witness = verdict.witnesses.find((w) => w.quantity === 'sparkAdvance');
  expect(witness?.remark?.code).toMatch(/^compare\/declared-/);
  const partly = verdict.remarks.find((r) => r.code === 'compare/declared-partly');
  const said = partly && noteText(partly, createShow('en', metricUnits));
  expect(said).toMatch(/^Declared \+1\.0° of spark advance, logged \+0\.4°: retard took the rest\.$/);
});

describe('what the declared change brings with it', () => {
  const curve =
    (quantity: 'intakeTemperature' | 'fluidPressure' | 'boost', of: (k: number) => number): Change =>
    (p) => ({ ...p, curves: { ...p.curves, [quantity]: p.power.engineSpeed_rad_s.map((_, k) => of(k)) } });
  const spray = declareChange('spray');
  const sprayed: Change = (p, place) => {
    const fluid = p.power.engineSpeed_rad_s.map(() => 3e-6);
    const spark = before[place]?.curves.sparkAdvance as Float64Array;
    return { ...p, curves: { ...p.curves, fluidFlow: fluid, sparkAdvance: spark } };
  };
  const dry: Change = (p) => ({
    ...p,
    curves: { ...p.curves, fluidFlow: p.power.engineSpeed_rad_s.map(() => 0) },
  });

  it.each([['declared', spray] as const, ['not declared', null] as const])(
    'a charge 20 K cooler under a spray that is %s follows it and refuses nothing',
    (_, change) => {
      const verdict = judge({
        before: before.map(dry).map(curve('intakeTemperature', () => 325)),
        after: after.map(sprayed).map(curve('intakeTemperature', () => 305)),
        declared: change,
      });
      expect(verdict.reasons).toEqual([]);
      expect(verdict.kind).not.toBe('not-comparable');
      expect(verdict.witnesses.find((w) => w.quantity === 'intakeTemperature')?.role).toBe('follows');
    },
  );

  it('the pressure of a line at rest may wander by 20 kPa without being a spray, 60 kPa are one', () => {
    const at = (value: number) =>
      reasonsOf(
        curve('fluidPressure', () => 20_000),
        curve('fluidPressure', () => value),
      );
    expect(at(40_000)).toEqual([]);
    expect(at(80_000)).toEqual(['compare/also-moved']);
  });

  it('boost that one side alone logged is said, since nobody can tell whether it moved', () => {
    const without: Change = (p) => {
      const { boost: _boost, ...curves } = p.curves;
      return { ...p, curves };
    };
    const verdict = verdictOf(same, without);
    expect(verdict.remarks).toContainEqual({
      code: 'compare/witness-lost',
      facts: { quantity: 'boost', side: 'after' },
    });
    expect(verdictOf(without, without).remarks.map((r) => r.code)).not.toContain('compare/witness-lost');
  });
});

describe('the band judged over where nobody sets one', () => {
  it('begins where boost is up in every pull, and says so', () => {
    const verdict = verdictOf(same, same);
    // The invented turbine stands at 85 % of its boost near 3,680 rpm.
    const from = (verdict.band_rad_s?.[0] ?? 0) / rpm;
    expect(from).toBeGreaterThan(3600);
    expect(from).toBeLessThan(3760);
    expect(verdict.remarks.map((r) => r.code)).toContain('compare/from-spooled');
  });

  it('is all that the pulls cover where no pressure is logged or boost has no plateau', () => {
    const slow: Change = (p) => ({
      ...p,
      curves: { ...p.curves, boost: p.power.engineSpeed_rad_s.map((w) => 150 * w) },
    });
    const bare: Change = (p) => ({ ...p, curves: { sparkAdvance: p.curves.sparkAdvance as Float64Array } });
    for (const change of [slow, bare]) {
      expect((verdictOf(change, change).band_rad_s?.[0] ?? 0) / rpm).toBeLessThan(2800);
    }
  });

  it('is the asked one where it is set, spool-up or not', () => {
    const verdict = judge({ before, after, declared, band_rad_s: [3000 * rpm, 6000 * rpm] });
    expect((verdict.band_rad_s?.[0] ?? 0) / rpm).toBeCloseTo(3000, 6);
  });
});
