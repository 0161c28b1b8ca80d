import { describe, expect, it } from 'vitest';
import type { HostClient } from '../../../core/contract/index.ts';
import { ok } from '../../../core/result/index.ts';
import { askShared } from '../../../renderer/host/ask-shared.ts';

/** A host that answers when it is told to, and says what it was asked and what was called off. */
function slowHost() {
  const asked: { answer: () => void; signal: AbortSignal }[] = [];
  const host = {
    request: (_name: string, _input: unknown, options: { signal: AbortSignal }) =>
      new Promise((resolve) =>
        asked.push({ answer: () => resolve(ok({ sessions: [] })), signal: options.signal }),
      ),
  } as unknown as HostClient;
  return { host, asked };
}

const question = { name: 'sessions.list', input: {}, key: 'same', isLasting: true } as const;

describe('a request that several parts of the screen need', () => {
  it('is sent once, and all get the same answer', async () => {
    const { host, asked } = slowHost();
    const [first, second] = [askShared(host, question), askShared(host, question)];
    expect(asked).toHaveLength(1);
    asked[0]?.answer();
    expect(await first.answer).toBe(await second.answer);
  });

  it('is not sent again while its answer is used, and is once nobody does', async () => {
    const { host, asked } = slowHost();
    const first = askShared(host, question);
    asked[0]?.answer();
    await first.answer;
    const second = askShared(host, question);
    first.leave();
    askShared(host, question).leave();
    expect(asked).toHaveLength(1);
    second.leave();
    askShared(host, question);
    expect(asked).toHaveLength(2);
  });

  it('is sent again for another key, for another host, and where answers do not last', async () => {
    const { host, asked } = slowHost();
    const passing = { ...question, isLasting: false };
    const first = askShared(host, passing);
    askShared(host, passing);
    askShared(host, { ...passing, key: 'other' });
    expect(asked).toHaveLength(2);
    asked[0]?.answer();
    await first.answer;
    await Promise.resolve();
    askShared(host, passing);
    expect(asked).toHaveLength(3);
    const other = slowHost();
    askShared(other.host, passing);
    expect(other.asked).toHaveLength(1);
  });

  it('is called off by the last who leaves, not before', () => {
    const { host, asked } = slowHost();
    const [first, second] = [askShared(host, question), askShared(host, question)];
    first.leave();
    expect(asked[0]?.signal.aborted).toBe(false);
    second.leave();
    expect(asked[0]?.signal.aborted).toBe(true);
    askShared(host, question);
    expect(asked).toHaveLength(2);
  });
});
