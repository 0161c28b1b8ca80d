import { expect, it } from 'vitest';
import { targetOf } from '../../../renderer/hooks/use-long-list.ts';

it('a key leads from a row to another one and never out of the list', () => {
  const from = (key: string, index: number) => targetOf(key, index, 5000);
  expect([from('ArrowDown', 0), from('ArrowUp', 0), from('ArrowDown', 4999)]).toEqual([1, 0, 4999]);
  expect([from('PageDown', 4995), from('PageUp', 25), from('Home', 3000), from('End', 2)]).toEqual([
    4999, 15, 0, 4999,
  ]);
  expect([from('j', 7), from('Tab', 7)]).toEqual([null, null]);
});
