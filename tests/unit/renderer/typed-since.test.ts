import { describe, expect, it } from 'vitest';
import { isMuchTyped } from '../../../renderer/components/typed-since.ts';

describe('what was typed since a dialog opened', () => {
  it('is much from the sixth character on', () => {
    expect(isMuchTyped([''], ['bumpy'])).toBe(false);
    expect(isMuchTyped([''], ['bumpy!'])).toBe(true);
  });

  it('is counted over all fields together', () => {
    expect(isMuchTyped(['', '', ''], ['1.2', '', '1.4'])).toBe(true);
  });

  it('leaves out what stood before, at the start, at the end or all around', () => {
    const long = 'in the loaded cells from 3000 rpm on';
    expect(isMuchTyped([long], [long])).toBe(false);
    expect(isMuchTyped([long], [`${long}, all`])).toBe(false);
    expect(isMuchTyped([long], [long.replace('3000', '3500')])).toBe(false);
    expect(isMuchTyped([long], [long.replace('loaded', 'spray-covered')])).toBe(true);
  });

  it('leaves out what was only deleted, and blanks', () => {
    expect(isMuchTyped(['wheelspin at the start'], ['wheel'])).toBe(false);
    expect(isMuchTyped([''], ['          '])).toBe(false);
  });

  it('counts letters that stand twice once', () => {
    expect(isMuchTyped(['aaa'], ['aaaaaaaa'])).toBe(false);
    expect(isMuchTyped(['aaa'], ['aaaaaaaaa'])).toBe(true);
  });
});
