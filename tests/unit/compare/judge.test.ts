import { describe, expect, it } from 'vitest';
import { declareChange, type JudgeInput, judge, type PullEvidence } from '../../../core/compare/index.ts';
import {
  type Day,
  type InventedEntry,
  inventDay,
  quietDay,
  trueMean,
} from '../../support/invented-session.ts';

const degree = Math.PI / 180;

/** Two entries of an invented day, first against second. */
function two(after: Partial<InventedEntry>, day: Partial<Day> = {}, pulls = 4) {
  const made = inventDay({
    ...quietDay,
    ...day,
    entries: [
      { pulls, share: 0 },
      { pulls, share: 0, ...after },
    ],
  });
  return { before: made[0]?.pulls ?? [], after: made[1]?.pulls ?? [] };
}

const codes = (input: JudgeInput) => judge(input).reasons.map((r) => r.code);
const spark = declareChange('spark', { size: degree });

describe('the verdict', () => {
  it('is a gain where spark brought 4 %, and the interval holds the truth', () => {
    const verdict = judge({ ...two({ share: 0.04, moved: { spark: degree } }), declared: spark });
    expect(verdict.kind).toBe('gain');
    const truth = 0.04 * trueMean(verdict.band_rad_s ?? [0, 0]);
    expect(verdict.interval95?.[0]).toBeLessThan(truth);
    expect(verdict.interval95?.[1]).toBeGreaterThan(truth);
    expect(verdict.morePulls).toBeNull();
  });

  it('is a loss with the sign turned round when the sides are swapped', () => {
    const { before, after } = two({ share: 0.04, moved: { spark: degree } });
    const there = judge({ before, after, declared: null });
    const back = judge({ before: after, after: before, declared: null });
    expect(there.kind).toBe('gain');
    expect(back.kind).toBe('loss');
    expect(Math.log1p(back.effectShare ?? 0)).toBeCloseTo(-Math.log1p(there.effectShare ?? 0), 9);
  });

  it('is equivalent where good pulls show nothing beyond the margin', () => {
    const verdict = judge({
      ...two({ moved: { lambda: -0.02 } }, { repeatability: 0.002 }),
      declared: declareChange('mixture', { from: 0.84, to: 0.82 }),
    });
    expect(verdict.kind).toBe('equivalent');
  });

  it('stays undecided on rough pulls, and says how many more would do', () => {
    const verdict = judge({
      ...two({ share: 0.015, moved: { spark: degree } }, { repeatability: 0.012, seed: 5 }),
      declared: spark,
    });
    expect(verdict.kind).toBe('undecided');
    expect(verdict.reasons.map((r) => r.code)).toEqual(['compare/open']);
    expect(verdict.morePulls).toBeGreaterThan(0);
    expect(verdict.smallestSeen).toBeGreaterThan(0);
  });

  it('is undecided with one pull a side, however far apart they stand', () => {
    const verdict = judge({ ...two({ share: 0.3, moved: { spark: degree } }, {}, 1), declared: spark });
    expect(verdict.kind).toBe('undecided');
    expect(verdict.reasons.map((r) => r.code)).toEqual(['compare/one-pull']);
    expect(verdict.interval95).toBeNull();
  });

  it('may decide on one pull a side once the session has told how pulls repeat', () => {
    const made = inventDay({
      ...quietDay,
      entries: [
        { pulls: 4, share: 0 },
        { pulls: 1, share: 0 },
        { pulls: 1, share: 0.06, moved: { spark: degree } },
        { pulls: 4, share: 0.06, moved: { spark: degree } },
      ],
    });
    const verdict = judge({
      before: made[1]?.pulls ?? [],
      after: made[2]?.pulls ?? [],
      session: made,
      declared: spark,
    });
    expect(verdict.kind).toBe('gain');
    expect(verdict.remarks.map((r) => r.code)).toContain('compare/pooled');
  });

  it('says so when it leans on earlier sessions', () => {
    const verdict = judge({
      ...two({ share: 0.06, moved: { spark: degree } }, {}, 1),
      declared: spark,
      prior: { deviationShare: 0.006, degrees: 12 },
    });
    expect(verdict.kind).toBe('gain');
    expect(verdict.remarks.map((r) => r.code)).toContain('compare/prior-used');
  });
});

describe('not comparable', () => {
  it('where another gear was driven', () => {
    expect(codes({ ...two({ gear: 4 }), declared: null })).toContain('compare/other-gear');
  });

  it('where boost rose by 6 kPa although only the mixture was to change', () => {
    const verdict = judge({
      ...two({ share: 0.03, moved: { boost: 6000, lambda: -0.02 } }),
      declared: declareChange('mixture', { from: 0.84, to: 0.82 }),
    });
    expect(verdict.kind).toBe('not-comparable');
    expect(verdict.effect).toBeNull();
    expect(verdict.reasons.map((r) => r.code)).toEqual(['compare/also-moved']);
    expect(verdict.curve?.proven).toEqual([]);
    expect(verdict.witnesses.find((w) => w.quantity === 'boost')?.role).toBe('moved');
  });

  it('where knock control took a degree and a half back', () => {
    expect(
      codes({ ...two({ moved: { spark: 2 * degree, retard: 1.5 * degree } }), declared: spark }),
    ).toContain('compare/knock-retard');
  });

  it('where the declared change is not in the data', () => {
    expect(codes({ ...two({ share: 0.02 }), declared: spark })).toContain('compare/declared-missing');
  });

  it('where nothing was declared and two things moved', () => {
    expect(codes({ ...two({ moved: { boost: 15_000, spark: degree } }), declared: null })).toEqual([
      'compare/more-than-one',
    ]);
  });

  it('where a side has no pull, or both have the same one', () => {
    const { before, after } = two({});
    expect(codes({ before, after: [], declared: null })).toEqual(['compare/no-pulls']);
    expect(codes({ before, after: [before[0] as PullEvidence, ...after], declared: null })).toContain(
      'compare/same-pull',
    );
  });

  it('where one side was driven out and the other back', () => {
    const { before, after } = two({});
    const turned = (pulls: readonly PullEvidence[], direction: 1 | -1) =>
      pulls.map((p) => ({ ...p, direction }));
    expect(codes({ before: turned(before, 1), after: turned(after, -1), declared: null })).toContain(
      'compare/other-direction',
    );
  });
});

describe('what may follow is no second change', () => {
  it('fluid follows boost', () => {
    const verdict = judge({
      ...two({ share: 0.06, moved: { boost: 15_000, fluid: 6e-7 } }),
      declared: declareChange('boost', { from: 100_000, to: 115_000 }),
    });
    expect(verdict.kind).toBe('gain');
    expect(verdict.witnesses.find((w) => w.quantity === 'fluidFlow')?.role).toBe('follows');
    expect(verdict.witnesses.find((w) => w.quantity === 'boost')?.role).toBe('declared-happened');
  });

  it('one moved control is named where nothing was declared', () => {
    const verdict = judge({ ...two({ share: 0.05, moved: { boost: 15_000, fluid: 6e-7 } }), declared: null });
    expect(verdict.kind).toBe('gain');
    expect(verdict.remarks).toContainEqual(
      expect.objectContaining({
        code: 'compare/moved-named',
        facts: expect.objectContaining({ quantity: 'boost' }),
      }),
    );
  });
});

describe('which pulls count', () => {
  it('a pull that was lifted half way is kept but not counted', () => {
    const { before, after } = two({ share: 0.04, moved: { spark: degree } });
    const lifted = { ...(two({}, { seed: 9 }).after[0] as PullEvidence), id: 'lifted', isComplete: false };
    const verdict = judge({ before, after: [...after, lifted], declared: spark });
    expect(verdict.pullsAfter).toBe(4);
    expect(verdict.remarks).toContainEqual({
      code: 'compare/left-out-incomplete',
      facts: { pullId: 'lifted', side: 'after', place: 5 },
    });
  });

  it('a recording handed in twice counts once', () => {
    const { before, after } = two({});
    const verdict = judge({ before: [...before, before[0] as PullEvidence], after, declared: null });
    expect(verdict.pullsBefore).toBe(4);
    expect(verdict.remarks.map((r) => r.code)).toContain('compare/left-out-twice');
  });

  it('a pull 8 % below its fellows is left out and named', () => {
    const { before, after } = two({ share: 0.03, moved: { spark: degree } }, {}, 5);
    const weak = (p: PullEvidence) => ({
      ...p,
      power: { ...p.power, wheelPower: p.power.wheelPower.map((v) => v * 0.92) },
    });
    const verdict = judge({
      before,
      after: after.map((p, i) => (i === 2 ? weak(p) : p)),
      declared: spark,
    });
    expect(verdict.pullsAfter).toBe(4);
    const named = verdict.remarks.find((r) => r.code === 'compare/left-out-outlier');
    expect(named?.facts).toMatchObject({ side: 'after', place: 3 });
    expect(verdict.kind).toBe('gain');
  });
});

describe('what power was read from', () => {
  const read = (pulls: readonly PullEvidence[], basis: PullEvidence['power']['basis'], withSpeed: boolean) =>
    pulls.map((p) => ({
      ...p,
      power: { ...p.power, basis },
      curves: withSpeed
        ? { ...p.curves, vehicleSpeed: p.power.engineSpeed_rad_s.map((w) => w / 17) }
        : p.curves,
    }));

  it('a dyno’s channel on one side and speed on the other can’t be compared', () => {
    const { before, after } = two({});
    expect(
      codes({
        before: read(before, 'power-channel', false),
        after: read(after, 'engine-speed', false),
        declared: null,
      }),
    ).toContain('compare/other-basis');
  });

  it('two speeds read together are one instrument, whichever of them leads', () => {
    const { before, after } = two({});
    expect(
      codes({
        before: read(before, 'vehicle-speed', true),
        after: read(after, 'engine-speed', true),
        declared: null,
      }),
    ).not.toContain('compare/other-basis');
  });
});
