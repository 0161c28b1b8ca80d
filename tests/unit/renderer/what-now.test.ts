import { describe, expect, it } from 'vitest';
import type { Ledger, Snapshot } from '../../../core/contract/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, entryTitle, screenWords } from '../../../core/words/index.ts';
import { stepWords } from '../../../renderer/now/step-words.ts';
import { whatNow } from '../../../renderer/now/what-now.ts';

type Driven = {
  readonly kind: string;
  readonly pulls: number;
  readonly verdict?: string;
  readonly morePulls?: number | null;
  readonly state?: 'kept' | 'dropped';
};

/** A ledger of these entries, and what was worked out for it. */
function day(...driven: readonly Driven[]): [Snapshot, Ledger] {
  const ledger = driven.map(({ kind, pulls, state = 'kept' }, i) => ({
    id: `e${i}`,
    kind,
    title: `Entry ${i}`,
    change: null,
    against: null,
    runs: pulls > 0 ? [{ runId: `r${i}`, from_s: null, to_s: null }] : [],
    state,
  }));
  const lines = driven.map(({ pulls, verdict, morePulls = null }, i) => ({
    entryId: `e${i}`,
    pulls,
    verdict: verdict ? { kind: verdict, morePulls } : null,
  }));
  return [{ session: { ledger } } as unknown as Snapshot, { lines } as unknown as Ledger];
}

const baseline = { kind: 'baseline', pulls: 3 };
const gain = { kind: 'boost', pulls: 3, verdict: 'gain' };

describe('the one thing to do now, from the ledger alone', () => {
  const states: readonly [string, readonly Driven[], string, RegExp][] = [
    ['nothing driven', [{ kind: 'baseline', pulls: 0 }], 'baseline', /^Drive the baseline$/],
    ['two baseline pulls', [{ kind: 'baseline', pulls: 2 }], 'baseline-more', /^One more baseline pull$/],
    ['a baseline', [baseline], 'change', /^Make one change$/],
    ['a change not driven', [baseline, { kind: 'boost', pulls: 0 }], 'drive', /^Drive Entry 1$/],
    [
      'undecided by one pull',
      [baseline, { ...gain, verdict: 'undecided', morePulls: 1 }],
      'more',
      /^One more pull for Entry 1$/,
    ],
    ['undecided for good', [baseline, { ...gain, verdict: 'undecided' }], 'undecidable', /can’t be told/],
    ['not comparable', [baseline, { ...gain, verdict: 'not-comparable' }], 'not-comparable', /again$/],
    ['a loss', [baseline, { ...gain, verdict: 'loss' }], 'loss', /^Go back on Entry 1$/],
    ['a loss that was dropped', [baseline, { ...gain, verdict: 'loss', state: 'dropped' }], 'change', /./],
    ['a gain', [baseline, gain], 'next', /^Make the next change$/],
    [
      'four changes since the day was checked',
      [baseline, gain, gain, gain, gain],
      'again',
      /^Drive an earlier/,
    ],
    [
      'the day was checked',
      [baseline, gain, gain, gain, { kind: 'nothing', pulls: 2, verdict: 'equivalent' }],
      'next',
      /./,
    ],
  ];
  it.each(states)('%s', (_, driven, kind, title) => {
    const step = whatNow(...day(...driven));
    expect(step?.kind).toBe(kind);
    const show = createShow('en', metricUnits);
    const words = step && stepWords(step, (e) => entryTitle(e, show), screenWords('en').now);
    expect(words?.title).toMatch(title);
    expect(words?.why).not.toBe('');
  });

  it('says nothing while the ledger is worked out', () => {
    const [snapshot] = day(baseline, gain);
    expect(whatNow(snapshot, null)).toBeNull();
  });
});
