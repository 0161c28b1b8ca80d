import { expect, it } from 'vitest';
import { isTooDeep } from '../../../core/session/index.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const nested = (levels: number, open: string, close: string) =>
  `${open.repeat(levels)}${' '.repeat(2000)}${close.repeat(levels)}`;

it.each([
  ['500 arrays', nested(500, '[', ']'), false],
  ['501 arrays', nested(501, '[', ']'), true],
  ['501 objects', nested(501, '{"a":', '}'), true],
  ['brackets inside a string', `["${'['.repeat(2000)}"]`, false],
  ['a quote escaped in a string', `["\\"${'{'.repeat(2000)}"]`, false],
  ['a backslash before the closing quote', `["\\\\",${nested(500, '[', ']')}]`, true],
  ['many beside each other', `[${'[],{},'.repeat(2000)}0]`, false],
  ['a string that never closes', `"${'['.repeat(2000)}`, false],
])('%s', (_, text, expected) => {
  expect(isTooDeep(bytes(text))).toBe(expected);
});
