import { describe, expect, it } from 'vitest';
import { isNamed } from '../../../renderer/components/is-named.ts';

describe('a command is found by what is typed of its name', () => {
  it.each([
    ['Undo: fluid target', 'FLUID', true],
    ['Zurücknehmen', 'zuruck', true],
    ['Zurücknehmen', 'zuru\u0308ck', true],
    ['Größe', 'grosse', true],
    ['Grosse', 'größe', true],
    ['Show the keys', ' keys ', true],
    ['Show the keys', '', true],
    ['Show the keys', 'kyes', false],
  ])('%s by “%s”: %s', (name, typed, isFound) => expect(isNamed(name, typed)).toBe(isFound));
});
