import { describe, expect, it } from 'vitest';
import type { Note } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { shortReasons as de } from '../../../core/words/de/short-reasons.ts';
import { shortReasons as en } from '../../../core/words/en/short-reasons.ts';
import { createShow, noteText, shortReason } from '../../../core/words/index.ts';

const english = createShow('en', metricUnits);
const german = createShow('de', metricUnits);
const moved: Note = {
  code: 'compare/also-moved',
  facts: { quantity: 'boost', delta: 6_000, half: 1_000, declared: 'spark' },
};

describe('a reason in a few words', () => {
  it('names what moved, in the reader’s language', () => {
    expect(shortReason(moved, english)).toBe('boost moved as well');
    expect(shortReason(moved, german)).toBe('auch bewegt: Ladedruck');
  });

  it('is the whole sentence where there is no shorter one', () => {
    const open: Note = { code: 'compare/no-repeatability', facts: {} };
    expect(shortReason(open, english)).toBe(noteText(open, english));
  });

  it('fits on a line of the ledger: 36 letters', () => {
    for (const words of [en, de]) {
      for (const say of Object.values(words)) {
        const facts = { side: 'before', quantity: 'boost' } as never;
        expect(say(facts).length).toBeLessThanOrEqual(36);
      }
    }
  });
});
