import { expect, it } from 'vitest';
import type { Entry } from '../../../core/session/index.ts';
import { stepPlace } from '../../../renderer/now/step-place.ts';

const kept = (...kinds: Entry['kind'][]) => kinds.map((kind) => ({ kind, state: 'kept' as const }));
const left = (...kinds: string[]) => ({ steps: kinds.map((kind) => ({ kind })) });
const boost = { kind: 'boost' } as never;

it('counts the changes that stand and those still planned', () => {
  const ladder = left('boost', 'spark', 'nothing', 'spark', 'mixture');
  const ledger = [...kept('baseline', 'spray', 'boost'), { kind: 'spark', state: 'dropped' } as const];
  expect(stepPlace({ kind: 'make-step', step: boost, ladder }, ledger)).toEqual({ number: 3, of: 6 });
  expect(stepPlace({ kind: 'more-pulls', step: null, ladder }, ledger)).toEqual({ number: 2, of: 6 });
});

it('the fit review stands before the first step; baseline, repeat and end are no steps', () => {
  const ladder = left('spray', 'boost');
  expect(stepPlace({ kind: 'review-fit', step: null, ladder }, kept('baseline'))).toEqual({
    number: 1,
    of: 2,
  });
  expect(stepPlace({ kind: 'drive-baseline', step: null, ladder }, kept('baseline'))).toBeNull();
  const again = { kind: 'nothing' } as never;
  expect(stepPlace({ kind: 'make-step', step: again, ladder }, kept('baseline', 'spray'))).toBeNull();
  expect(stepPlace({ kind: 'done', step: null, ladder: left() }, kept('baseline', 'spray'))).toBeNull();
});
