import { describe, expect, it } from 'vitest';
import type { LedgerLine } from '../../../core/contract/index.ts';
import { EntrySchema } from '../../../core/session/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, screenWords } from '../../../core/words/index.ts';
import { rideEffect } from '../../../renderer/ride/ride-effect.ts';

const words = {
  show: createShow('en', metricUnits),
  said: screenWords('en').ride,
  note: () => 'Boost moved.',
};
const entry = (kind: string) => EntrySchema.parse({ id: 'x', kind, createdAt: '2027-03-14T09:00:00.000Z' });
const line = (pulls: number, verdict: object | null, level: LedgerLine['level'] = null) =>
  ({ entryId: 'x', pulls, level, verdict }) as LedgerLine;
const verdict = (kind: string, more: number | null = null) => ({
  kind,
  effect: 10_900,
  interval95: [9_500, 12_300],
  morePulls: more,
  reasons: [{ code: 'compare/any', facts: {} }],
});

describe('rideEffect', () => {
  it('says a gain as a word, a number with its sign, and what it may be off by', () => {
    expect(rideEffect(entry('boost'), line(3, verdict('gain')), words)).toMatchObject({
      word: 'Gain',
      amount: { number: '+10.9', unit: 'kW' },
      lines: ['give or take 1.4'],
      progress: '3 pulls',
    });
  });

  it('says how many pulls would decide, and that no number would', () => {
    expect(rideEffect(entry('boost'), line(2, verdict('undecided', 2)), words)).toMatchObject({
      lines: ['give or take 1.4', '2 more pulls would decide'],
      progress: '2 of 4 pulls',
    });
    expect(rideEffect(entry('boost'), line(2, verdict('undecided')), words).lines).toContain(
      'More pulls would not decide it',
    );
  });

  it('shows no number where nothing can be compared, but the reason', () => {
    expect(rideEffect(entry('spark'), line(2, verdict('not-comparable')), words)).toMatchObject({
      amount: null,
      lines: ['Boost moved.'],
    });
  });

  it('shows a baseline as a level on its way to three pulls', () => {
    const level = { mean: 152_300, half: 600 };
    expect(rideEffect(entry('baseline'), line(2, null, level), words)).toMatchObject({
      amount: { number: '152.3', unit: 'kW' },
      lines: ['give or take 0.6'],
      progress: '2 of 3 pulls',
    });
    expect(rideEffect(entry('baseline'), line(0, null), words).progress).toBe('0 of 3 pulls');
  });
});
