import { describe, expect, it } from 'vitest';
import { remarkGroupOf } from '../../../renderer/plan/remark-groups.ts';

describe('the remarks of a plan', () => {
  it('what can harm stands apart from what the numbers rest on', () => {
    expect(remarkGroupOf({ code: 'fit/lock-volume', facts: { volume: 57e-6, seconds: 23 } })).toBe('harm');
    expect(remarkGroupOf({ code: 'injection/under-fed-at-peak', facts: { feed: 0.79 } })).toBe('harm');
    expect(
      remarkGroupOf({ code: 'injection/rule-of-thumb', facts: { rule: 3e-6, need: 3e-6, difference: 0 } }),
    ).toBe('basis');
  });

  it('every other remark is of the spray', () => {
    expect(remarkGroupOf({ code: 'injection/ratio-hardly-seen', facts: { ratio: 0.03 } })).toBe('spray');
  });
});
