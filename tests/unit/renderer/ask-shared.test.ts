import { afterEach, describe, expect, it, vi } from 'vitest';
import type { HostClient } from '../../../core/contract/index.ts';
import { fail, ok } from '../../../core/result/index.ts';
import { askShared, keptAnswer } from '../../../renderer/host/ask-shared.ts';

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

afterEach(() => {
  vi.useRealTimers();
});

describe('a request that several parts of the screen need', () => {
  it('is sent once, and all get the same answer', async () => {
    const { host, asked } = slowHost();
    const [first, second] = [askShared(host, question), askShared(host, question)];
    expect(asked).toHaveLength(1);
    asked[0]?.answer();
    expect(await first.answer).toBe(await second.answer);
  });

  it('is not sent again while its answer is used or has just been, and is a while after', async () => {
    vi.useFakeTimers();
    const { host, asked } = slowHost();
    const first = askShared(host, question);
    expect(keptAnswer(host, question)).toBeNull();
    asked[0]?.answer();
    const answer = await first.answer;
    const second = askShared(host, question);
    first.leave();
    second.leave();
    expect(keptAnswer(host, question)).toBe(answer);
    askShared(host, question).leave();
    expect(asked).toHaveLength(1);
    vi.runAllTimers();
    expect(keptAnswer(host, question)).toBeNull();
    askShared(host, question);
    expect(asked).toHaveLength(2);
  });

  it('stays kept where somebody came back to its answer', async () => {
    vi.useFakeTimers();
    const { host, asked } = slowHost();
    const first = askShared(host, question);
    asked[0]?.answer();
    await first.answer;
    first.leave();
    askShared(host, question);
    vi.runAllTimers();
    expect(keptAnswer(host, question)).not.toBeNull();
  });

  it('is sent again at once after a refusal', async () => {
    const refusals: unknown[] = [];
    const refusing = {
      request: async () => {
        refusals.push(0);
        return fail({ code: 'contract/host-gone', facts: {} });
      },
    } as unknown as HostClient;
    const first = askShared(refusing, question);
    await first.answer;
    first.leave();
    askShared(refusing, question);
    expect(refusals).toHaveLength(2);
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
