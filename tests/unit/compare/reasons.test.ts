import { describe, expect, it } from 'vitest';
import { declareChange, judge, type PullEvidence } from '../../../core/compare/index.ts';
import { ConditionsSchema } from '../../../core/power/index.ts';
import type { NoteCode } from '../../../core/result/index.ts';
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
      power: { ...p.power, wheelPower: p.power.wheelPower.map((v, i) => (i === 90 ? Number.NaN : v)) },
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
  expect(verdict.remarks.map((r) => r.code)).toContain('compare/declared-partly');
  expect(witness?.remark?.code).toMatch(/^compare\/declared-/);
});
