import type { HostClient, RequestInput, RequestName, RequestOutput } from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';

type Shared = {
  readonly answer: Promise<Result<unknown>>;
  readonly abort: AbortController;
  users: number;
  /** The answer once it has come. */
  come: Result<unknown> | null;
};

/** How long a good answer that lasts is kept for who asks next. */
const kept_ms = 3000;

const sharedOf = new WeakMap<HostClient, Map<string, Shared>>();

export type Asked<N extends RequestName> = {
  readonly answer: Promise<Result<RequestOutput<N>>>;
  /** Called once, when the answer is no longer wanted; the last to leave cancels what is on its way. */
  readonly leave: () => void;
};

export type SharedQuestion<N extends RequestName> = {
  readonly name: N;
  readonly input: RequestInput<N>;
  /** Two questions of one request and one key have the same answer. */
  readonly key: string;
  /** Whether the answer holds for as long as anybody uses it, or is asked for anew once it has come. */
  readonly isLasting: boolean;
};

/** Asks the host once, however many parts of the screen ask for the same. */
export function askShared<N extends RequestName>(host: HostClient, question: SharedQuestion<N>): Asked<N> {
  const all = sharedOf.get(host) ?? new Map<string, Shared>();
  sharedOf.set(host, all);
  const key = keyOf(question);
  const shared = all.get(key) ?? ask(host, question);
  all.set(key, shared);
  shared.users += 1;
  const forget = () => {
    if (all.get(key) === shared) all.delete(key);
  };
  if (!question.isLasting) void shared.answer.finally(forget);
  return {
    answer: shared.answer as Promise<Result<RequestOutput<N>>>,
    leave: () => {
      shared.users -= 1;
      if (shared.users > 0) return;
      if (question.isLasting && shared.come?.ok) {
        setTimeout(() => shared.users === 0 && forget(), kept_ms);
        return;
      }
      forget();
      shared.abort.abort();
    },
  };
}

/** The answer of a question that lasts, where it has come already and is still kept. */
export function keptAnswer<N extends RequestName>(
  host: HostClient,
  question: SharedQuestion<N>,
): Result<RequestOutput<N>> | null {
  const shared = question.isLasting ? sharedOf.get(host)?.get(keyOf(question)) : undefined;
  return (shared?.come as Result<RequestOutput<N>> | undefined) ?? null;
}

const keyOf = ({ name, key }: Pick<SharedQuestion<RequestName>, 'name' | 'key'>) => `${name}|${key}`;

function ask<N extends RequestName>(host: HostClient, { name, input }: SharedQuestion<N>): Shared {
  const abort = new AbortController();
  const answer = host.request(name, input, { signal: abort.signal });
  const shared: Shared = { answer, abort, users: 0, come: null };
  void answer.then((come) => {
    shared.come = come;
  });
  return shared;
}
