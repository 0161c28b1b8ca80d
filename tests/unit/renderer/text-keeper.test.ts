import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { textKeeper } from '../../../renderer/hooks/text-keeper.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Keeps each text when the test lets it. */
function slowKeep() {
  const kept: string[] = [];
  const done: (() => void)[] = [];
  const keep = (text: string) =>
    new Promise<void>((resolve) => {
      done.push(() => {
        kept.push(text);
        resolve();
      });
    });
  const answer = async () => {
    done.shift()?.();
    await vi.advanceTimersByTimeAsync(0);
  };
  return { kept, keep, answer, onTheirWay: () => done.length };
}

it('a word is kept once, after a pause in typing', async () => {
  const { kept, keep, answer, onTheirWay } = slowKeep();
  const keeper = textKeeper(keep);
  for (const text of ['w', 'wo', 'word']) {
    keeper.change(text);
    await vi.advanceTimersByTimeAsync(100);
  }
  expect(onTheirWay()).toBe(0);
  await vi.advanceTimersByTimeAsync(300);
  await answer();
  expect(kept).toEqual(['word']);
});

it('what is typed while a keeping is on its way follows it, in its latest form', async () => {
  const { kept, keep, answer, onTheirWay } = slowKeep();
  const keeper = textKeeper(keep);
  keeper.change('a');
  void keeper.flush();
  keeper.change('ab');
  const left = keeper.flush();
  keeper.change('abc');
  expect(onTheirWay()).toBe(1);
  await answer();
  expect(onTheirWay()).toBe(1);
  await answer();
  await left;
  expect(kept).toEqual(['a', 'abc']);
});

it('a field that was left with nothing new in it keeps what is typed there later', async () => {
  const { kept, keep, answer } = slowKeep();
  const keeper = textKeeper(keep);
  await keeper.flush();
  keeper.change('later');
  void keeper.flush();
  await answer();
  expect(kept).toEqual(['later']);
});

it('a keeping that fails leaves the next one free', async () => {
  const kept: string[] = [];
  let isDown = true;
  const keeper = textKeeper(async (text) => {
    if (isDown) throw new Error('the host is gone');
    kept.push(text);
  });
  keeper.change('a');
  await expect(keeper.flush()).rejects.toThrow('the host is gone');
  isDown = false;
  keeper.change('b');
  await keeper.flush();
  expect(kept).toEqual(['b']);
});
