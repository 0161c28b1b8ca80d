import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../../core/compare/index.ts';
import { fromSi } from '../../../core/units/index.ts';
import { sampleSeed } from '../../../sample-sessions/generate.ts';
import { type Chapter, story } from '../../../sample-sessions/simulation/story.ts';
import { baseTune } from '../../../sample-sessions/simulation/tune.ts';
import { storyPulls, storyVerdicts } from '../../support/sample-story.ts';
import { bandMeanOf, type TrueEntry, truth } from '../../support/sample-truth.ts';

const session = storyPulls(story, sampleSeed);
const verdicts = storyVerdicts(story, session);
const told = truth.entries.slice(1).map((entry, i) => ({ entry, verdict: verdicts[i] as Verdict }));

/** What the declared change is truly worth over the verdict's own band [kW]. */
function worth(entry: TrueEntry, verdict: Verdict): number {
  const [from, to] = verdict.band_rad_s ?? [Number.NaN, Number.NaN];
  return bandMeanOf(entry.declared?.delta_kW ?? [], fromSi(from, 'rpm'), fromSi(to, 'rpm'));
}

describe('the story of the sample session', () => {
  it('counts every pull that was driven', () => {
    expect(session.map((e) => e.pulls.length)).toEqual([4, 4, 3, 3, 3, 3]);
    expect(told.map(({ verdict }) => [verdict.pullsBefore, verdict.pullsAfter])).toEqual([
      [4, 4],
      [4, 3],
      [3, 3],
      [3, 3],
      [3, 3],
    ]);
  });

  it.each(told)('is told right: $entry.id', ({ entry, verdict }) => {
    expect(entry.expectedVerdicts).toContain(verdict.kind);
  });

  it('has the true worth of each clean change inside its 95 % interval', () => {
    for (const { entry, verdict } of told.filter((t) => !t.entry.isConfounded)) {
      const [low, high] = verdict.interval95 ?? [Number.NaN, Number.NaN];
      const real = worth(entry, verdict);
      expect(low / 1000, entry.id).toBeLessThanOrEqual(real);
      expect(high / 1000, entry.id).toBeGreaterThanOrEqual(real);
      // An interval that holds the truth only because it is wide would prove nothing.
      expect((high - low) / 2000, entry.id).toBeLessThan(0.012 * entry.bandMean_kW);
    }
  });

  it('refuses the last entry because boost rose as well, and says by how much', () => {
    const { verdict } = told.at(-1) ?? { verdict: undefined };
    const boost = verdict?.witnesses.find((w) => w.quantity === 'boost' || w.quantity === 'manifoldPressure');
    expect(boost?.role).toBe('moved');
    expect((boost?.delta ?? 0) / 1000).toBeGreaterThan(5);
    expect((boost?.delta ?? 0) / 1000).toBeLessThan(7);
    expect(verdict?.reasons.length).toBeGreaterThan(0);
    expect(JSON.stringify(verdict?.reasons)).toMatch(/boost|manifoldPressure/);
    expect(verdict?.effect).toBeNull();
  });

  it('sees each declared change in the logs, by its size', () => {
    const seen = (id: string, quantity: string) => {
      const found = told.find(({ entry }) => entry.id === id)?.verdict.witnesses;
      return found?.find((w) => w.quantity === quantity);
    };
    const boost = seen('boost', 'manifoldPressure') ?? seen('boost', 'boost');
    expect(boost?.role).toBe('declared-happened');
    expect((boost?.delta ?? 0) / 1000).toBeCloseTo(10, 0);
    expect(seen('spark', 'sparkAdvance')?.role).toBe('declared-happened');
    expect(fromSi(seen('spark', 'sparkAdvance')?.delta ?? 0, 'deg')).toBeCloseTo(1, 1);
    expect(seen('mixture', 'lambda')?.role).toBe('declared-happened');
    expect(seen('mixture', 'lambda')?.delta).toBeCloseTo(-0.02, 2);
    expect(seen('spray', 'fluidFlow')?.role).toBe('declared-happened');
  });
});

describe('a spark step that knock retard took back', () => {
  const [baseline, , , spark] = story;
  const step = (id: string, extra: number): Chapter => ({
    ...(extra === 0 ? (baseline as Chapter) : (spark as Chapter)),
    id,
    change: extra === 0 ? null : { from: null, to: { value: extra, unit: 'deg' }, where: '' },
    tune: { ...baseTune, loadedSpark_deg: extra },
    files: [{ name: `${id}.csv`, pulls: 3, isPaused: true }],
  });
  const chapters = [step('dry', 0), step('too-far', 4)];
  const [verdict] = storyVerdicts(chapters, storyPulls(chapters, sampleSeed));

  it('is not comparable, and the reason names the retard', () => {
    expect(verdict?.kind).toBe('not-comparable');
    expect(JSON.stringify(verdict?.reasons)).toMatch(/retard/);
  });
});
