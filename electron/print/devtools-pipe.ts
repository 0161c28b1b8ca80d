import type { Readable, Writable } from 'node:stream';

export type DevtoolsPipe = {
  readonly send: (
    method: string,
    params?: object,
    sessionId?: string,
  ) => Promise<Readonly<Record<string, unknown>>>;
  readonly once: (method: string) => Promise<void>;
};

type Message = {
  readonly id?: number;
  readonly method?: string;
  readonly result?: Readonly<Record<string, unknown>>;
  readonly error?: { readonly message: string };
};

/**
 * Commands to a browser over a pair of pipes: JSON messages, each ended by a zero byte. Pipes and no port, so that
 * nobody else on the machine can give commands.
 *
 * Source: Chrome DevTools Protocol, --remote-debugging-pipe.
 */
export function devtoolsPipe(write: Writable, read: Readable): DevtoolsPipe {
  const answers = new Map<
    number,
    { resolve: (result: Readonly<Record<string, unknown>>) => void; reject: (error: Error) => void }
  >();
  const events = new Map<string, (() => void)[]>();
  let rest: Buffer[] = [];
  let last = 0;

  function take(message: Message): void {
    if (message.id !== undefined) {
      const answer = answers.get(message.id);
      answers.delete(message.id);
      if (message.error) answer?.reject(new Error(message.error.message));
      else answer?.resolve(message.result ?? {});
    } else if (message.method !== undefined) {
      const waiting = events.get(message.method) ?? [];
      events.delete(message.method);
      for (const done of waiting) done();
    }
  }

  read.on('data', (chunk: Buffer) => {
    let from = 0;
    for (let end = chunk.indexOf(0); end >= 0; end = chunk.indexOf(0, from)) {
      const text = Buffer.concat([...rest, chunk.subarray(from, end)]).toString('utf8');
      rest = [];
      from = end + 1;
      take(JSON.parse(text) as Message);
    }
    if (from < chunk.length) rest.push(chunk.subarray(from));
  });
  const gone = () => {
    for (const { reject } of answers.values()) reject(new Error('the browser closed its pipe'));
    answers.clear();
  };
  read.on('close', gone);
  // A browser that dies breaks the pipe; the read side tells it.
  write.on('error', gone);

  return {
    send: (method, params = {}, sessionId) =>
      new Promise((resolve, reject) => {
        const id = ++last;
        answers.set(id, { resolve, reject });
        write.write(`${JSON.stringify({ id, method, params, ...(sessionId ? { sessionId } : {}) })}\0`);
      }),
    once: (method) =>
      new Promise((resolve) => {
        events.set(method, [...(events.get(method) ?? []), resolve]);
      }),
  };
}
