import { describe, expect, it } from 'vitest';
import type { PullSummary } from '../../../core/contract/index.ts';
import { screenWords } from '../../../core/words/index.ts';
import { handRemarks } from '../../../renderer/bench/pull-remarks.ts';

const drop = (reason: string) => ({ action: 'drop', reason }) as const;
const restore = (reason: string) => ({ action: 'restore', reason }) as const;
const remarks = (decisions: PullSummary['decisions'], language: 'en' | 'de' = 'en') => {
  const last = decisions.at(-1);
  const droppedBecause = last?.action === 'drop' ? last.reason : null;
  const pull = { droppedBecause, trimmedBecause: null, decisions } as unknown as PullSummary;
  return handRemarks(pull, screenWords(language).bench)
    .filter((t) => t !== '')
    .join(' ');
};

describe('beside a pull stands', () => {
  it('why it is left out, once', () => {
    expect(remarks([drop('wheelspin')])).toBe('wheelspin');
  });

  it('why it was left out and why it was taken back in', () => {
    const both = [drop('wheelspin'), restore('the film shows none')];
    expect(remarks(both)).toBe('Was left out: wheelspin. Taken back in: the film shows none.');
    expect(remarks(both, 'de')).toBe('War ausgelassen: wheelspin. Wieder gezählt: the film shows none.');
    expect(remarks([drop('wheelspin'), restore('')])).toBe('Was left out: wheelspin. Taken back in.');
  });

  it('what came before, once it is left out again', () => {
    expect(remarks([drop('wheelspin'), restore(''), drop('traffic')])).toBe(
      'traffic Was left out: wheelspin. Taken back in.',
    );
  });

  it('that one which ended early was counted by hand', () => {
    expect(remarks([restore('')])).toBe('Counted by hand.');
    expect(remarks([restore('long enough')], 'de')).toBe('Von Hand gezählt: long enough.');
  });
});
