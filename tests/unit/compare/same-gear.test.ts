import { describe, expect, it } from 'vitest';
import { declareChange, judge, judgeSession, type PullEvidence } from '../../../core/compare/index.ts';
import { inventDay, quietDay } from '../../support/invented-session.ts';

const day = inventDay({
  ...quietDay,
  entries: [
    { pulls: 4, share: 0 },
    { pulls: 4, share: 0.03 },
    { pulls: 4, share: 0.03 },
  ],
});
const [before, after] = day.map((e) => e.pulls) as [PullEvidence[], PullEvidence[]];
const declared = declareChange('other');

/** Engine speed over road speed [rad/m] of the invented gears. */
const third = 17;
const fourth = 13;

/** A car without gear ratios: no number, but a road speed. */
const driven =
  (turns: number, kind: 'vehicleSpeed' | 'gpsSpeed' = 'vehicleSpeed') =>
  (p: PullEvidence): PullEvidence => ({
    ...p,
    gear: null,
    curves: { ...p.curves, [kind]: p.power.engineSpeed_rad_s.map((w) => w / turns) },
  });
const unknown = (p: PullEvidence): PullEvidence => ({ ...p, gear: null });
const codes = (notes: readonly { code: string }[]) => notes.map((n) => n.code);
const judged = (b: readonly PullEvidence[], a: readonly PullEvidence[]) =>
  judge({ before: b, after: a, declared });

describe('without gear ratios engine speed over road speed tells the gear', () => {
  it.each(['vehicleSpeed', 'gpsSpeed'] as const)('sides in two gears are not comparable, by %s', (kind) => {
    const verdict = judged(before.map(driven(third, kind)), after.map(driven(fourth, kind)));
    expect(verdict.kind).toBe('not-comparable');
    // Neither tyres nor wheels that spin are said of it.
    expect(verdict.reasons).toEqual([
      { code: 'compare/other-gear-by-speeds', facts: { share: expect.closeTo(fourth / third - 1, 6) } },
    ]);
  });

  it.each(['vehicleSpeed', 'gpsSpeed'] as const)('one pull in another gear is left out, by %s', (kind) => {
    const mixed = after.map((p, i) => driven(i === 1 ? fourth : third, kind)(p));
    const verdict = judged(before.map(driven(third, kind)), mixed);
    expect(verdict.kind).toBe('gain');
    expect(verdict.pullsAfter).toBe(3);
    expect(verdict.remarks).toContainEqual({
      code: 'compare/left-out-gear-by-speeds',
      facts: expect.objectContaining({ side: 'after', place: 2 }),
    });
  });

  it('a gear that was told for all pulls does not hide another', () => {
    const told = (turns: number) => (p: PullEvidence) => ({ ...driven(turns)(p), gear: 3 });
    const verdict = judged(before.map(told(third)), after.map(told(fourth)));
    expect(codes(verdict.reasons)).toEqual(['compare/other-gear-by-speeds']);
  });

  it('tyres and slip are no gear', () => {
    const verdict = judged(before.map(driven(third)), after.map(driven(third * 1.03)));
    expect(codes(verdict.reasons)).toEqual(['compare/other-rolling']);
  });

  it('the closest gears of a box are told apart', () => {
    const verdict = judged(before.map(driven(third)), after.map(driven(third * 0.92)));
    expect(codes(verdict.reasons)).toEqual(['compare/other-gear-by-speeds']);
  });

  it('wheels that spun through half of a pull are no other gear', () => {
    const spun = (p: PullEvidence): PullEvidence => {
      const speeds = p.power.engineSpeed_rad_s;
      const vehicleSpeed = speeds.map((w, i) => w / (i < speeds.length / 2 ? 1.1 * third : third));
      return { ...p, gear: null, curves: { ...p.curves, vehicleSpeed } };
    };
    const verdict = judged(
      before.map(driven(third)),
      after.map((p, i) => (i === 0 ? spun(p) : driven(third)(p))),
    );
    expect(codes(verdict.remarks)).toContain('compare/left-out-spin');
    expect(codes(verdict.remarks)).not.toContain('compare/left-out-gear-by-speeds');
  });
});

describe('where nothing tells the gear it is said', () => {
  it('without a road speed', () => {
    const verdict = judged(before.map(unknown), after.map(unknown));
    expect(verdict.kind).toBe('gain');
    expect(codes(verdict.remarks)).toContain('compare/gear-open');
  });

  it('where one side holds a road speed of another kind', () => {
    const verdict = judged(before.map(driven(third)), after.map(driven(third, 'gpsSpeed')));
    expect(codes(verdict.remarks)).toContain('compare/gear-open');
  });

  it('not where gears or both speeds are known', () => {
    expect(codes(judged(before, after).remarks)).not.toContain('compare/gear-open');
    const verdict = judged(before.map(driven(third)), after.map(driven(third)));
    expect(codes(verdict.remarks)).not.toContain('compare/gear-open');
  });
});

it('numbers alone, as a log holds them, still part gears, and no spin is said of them', () => {
  const inGear = (gear: number, turns: number) => (p: PullEvidence) => ({ ...driven(turns)(p), gear });
  const verdict = judged(before.map(inGear(3, third)), after.map(inGear(4, fourth)));
  expect(verdict.reasons).toEqual([{ code: 'compare/other-gear', facts: { before: 3, after: 4 } }]);
});

const tableOf = (turnsOfEntries: readonly number[]) =>
  judgeSession(
    turnsOfEntries.map((turns, i) => ({
      id: `e${i}`,
      against: i === 0 ? null : `e${i - 1}`,
      repeats: null,
      declared,
      isKept: true,
      pulls: day[i]?.pulls.map(driven(turns)) ?? [],
    })),
  ).lines;

describe('an entry in another gear', () => {
  it('lends no scatter and has no level in the session', () => {
    const lines = tableOf([third, third, fourth]);
    expect(lines.map((l) => l.verdict?.kind ?? null)).toEqual([null, 'gain', 'not-comparable']);
    expect(lines.map((l) => l.pulls)).toEqual([4, 4, 0]);
  });

  it('stands back behind the baseline where both are as usual', () => {
    expect(tableOf([third, fourth]).map((l) => l.pulls)).toEqual([4, 0]);
    expect(tableOf([fourth, third]).map((l) => l.pulls)).toEqual([4, 0]);
  });
});
