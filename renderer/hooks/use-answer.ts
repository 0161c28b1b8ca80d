import { useEffect, useMemo, useState } from 'react';
import type { RequestInput, RequestName, RequestOutput } from '../../core/contract/index.ts';
import type { Problems, Result } from '../../core/result/index.ts';
import { askShared, keptAnswer, type SharedQuestion } from '../host/ask-shared.ts';
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
  const text = input === null ? null : JSON.stringify(input);
  // Equal inputs of two drawings are one question.
  const question = useMemo(
    () =>
      sharedQuestion(
        name,
        text === null ? null : (JSON.parse(text) as typeof input),
        revision,
        subject,
        attempt,
      ),
    [name, text, revision, subject, attempt],
  );
  const [kept, setKept] = useState<Kept<N> | null>(() => {
    const answer = question && keptAnswer(host, question);
    return answer && keptOf(question.key, answer);
  });

  useEffect(() => {
    if (!question) return;
    let isWanted = true;
    const asked = askShared(host, question);
    asked.answer.then((answer) => {
      if (isWanted) setKept((old) => (old?.key === question.key ? old : keptOf(question.key, answer)));
    });
    return () => {
      isWanted = false;
      asked.leave();
    };
  }, [host, question]);

  const shown = question && kept?.key.startsWith(`${subject}|`) ? kept : null;
  return {
    value: shown?.value ?? null,
    problems: shown?.problems ?? null,
    isBusy: question !== null && kept?.key !== question.key,
    retry: () => setAttempt((n) => n + 1),
  };
}

function keptOf<N extends RequestName>(key: string, answer: Result<RequestOutput<N>>): Kept<N> {
  return answer.ok
    ? { key, value: answer.value, problems: null }
    : { key, value: null, problems: answer.problems };
}

/**
 * A question as parts of the screen share it. What is about a session follows from it and its revision, and lasts;
 * lists of files may change without one. Null where nothing is asked.
 */
export function sharedQuestion<N extends RequestName>(
  name: N,
  input: RequestInput<N> | null,
  revision: number,
  subject: string,
  attempt = 0,
): SharedQuestion<N> | null {
  if (input === null) return null;
  const key = `${subject}|${revision}|${attempt}|${JSON.stringify(input)}`;
  return { name, input, key, isLasting: subject !== '' };
}
