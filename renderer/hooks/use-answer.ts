import { useEffect, useState } from 'react';
import type { RequestInput, RequestName, RequestOutput } from '../../core/contract/index.ts';
import type { Problems } from '../../core/result/index.ts';
import { askShared } from '../host/ask-shared.ts';
import { useHost } from '../host/HostProvider.tsx';

export type Answer<N extends RequestName> = {
  /** The last good answer; while a newer one is worked out, `isBusy` says so. */
  readonly value: RequestOutput<N> | null;
  readonly problems: Problems | null;
  readonly isBusy: boolean;
  readonly retry: () => void;
};

type Kept<N extends RequestName> = {
  readonly key: string;
  readonly value: RequestOutput<N> | null;
  readonly problems: Problems | null;
};

/**
 * The host's answer to a request, asked again when the input or the session's revision changes and cancelled
 * when it is no longer wanted. Parts of the screen that ask the same share one request. `input` null asks nothing.
 *
 * @param subject  what the answer is about; an answer about another subject is not shown while waiting
 */
export function useAnswer<N extends RequestName>(
  name: N,
  input: RequestInput<N> | null,
  revision: number,
  subject = '',
): Answer<N> {
  const host = useHost();
  const [attempt, setAttempt] = useState(0);
  const [kept, setKept] = useState<Kept<N> | null>(null);
  const text = input === null ? null : JSON.stringify(input);
  const key = `${subject}|${revision}|${attempt}|${text}`;

  useEffect(() => {
    if (text === null) return;
    let isWanted = true;
    const input = JSON.parse(text) as RequestInput<N>;
    // What is about a session follows from it and its revision; lists of files may change without one.
    const asked = askShared(host, { name, input, key, isLasting: subject !== '' });
    asked.answer.then((answer) => {
      if (!isWanted) return;
      setKept(
        answer.ok
          ? { key, value: answer.value, problems: null }
          : { key, value: null, problems: answer.problems },
      );
    });
    return () => {
      isWanted = false;
      asked.leave();
    };
  }, [host, name, text, key, subject]);

  const shown = text !== null && kept?.key.startsWith(`${subject}|`) ? kept : null;
  return {
    value: shown?.value ?? null,
    problems: shown?.problems ?? null,
    isBusy: text !== null && kept?.key !== key,
    retry: () => setAttempt((n) => n + 1),
  };
}
