import {
  type HostClient,
  type HostEvent,
  HostEventSchema,
  type RequestName,
  type RequestOutput,
} from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';
import { cancelled, checkAnswer, hostGone } from './check-answer.ts';
import type { FirstAnswer } from './first-answers.ts';
import { postRequest } from './post-request.ts';

/**
 * The host over loopback HTTP, beside the page itself; the cookie that the first page set goes along.
 *
 *   POST api/<name>         JSON {input, requestId}   -> Result as JSON; an aborted fetch cancels the request
 *   PUT  upload?name=&entryId=&folder=&requestId=   bytes    -> Result of runs.import
 *   GET  events            server-sent events, each `data:` one HostEvent as JSON
 */
export function createWebClient(base = './', firstAnswer: FirstAnswer = () => null): HostClient {
  const listeners = new Set<(event: HostEvent) => void>();
  const progressOf = new Map<string, (share: number) => void>();
  let source: EventSource | null = null;

  const onMessage = (message: MessageEvent<string>) => {
    const event = HostEventSchema.safeParse(JSON.parse(message.data));
    if (!event.success) return;
    if (event.data.type === 'progress') progressOf.get(event.data.requestId)?.(event.data.share);
    for (const listener of listeners) listener(event.data);
  };

  const checked = async <N extends RequestName>(
    name: N,
    answer: Promise<unknown>,
  ): Promise<Result<RequestOutput<N>>> => {
    try {
      return checkAnswer(name, await answer);
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return cancelled();
      return hostGone();
    }
  };

  return {
    request(name, input, options) {
      const signal = options?.signal instanceof AbortSignal ? options.signal : null;
      return checked(name, firstAnswer(name) ?? postRequest(base, name, input, signal));
    },
    async upload(file, entryId, options) {
      if (!(file instanceof File)) throw new Error('upload takes a browser File');
      const requestId = crypto.randomUUID();
      const query = new URLSearchParams({ name: file.name, requestId });
      if (entryId) query.set('entryId', entryId);
      if (options?.folder !== undefined) query.set('folder', options.folder);
      if (options?.onProgress) progressOf.set(requestId, options.onProgress);
      const sent = fetch(`${base}upload?${query}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/octet-stream' },
        body: file,
        credentials: 'same-origin',
        signal: options?.signal instanceof AbortSignal ? options.signal : null,
      });
      const answer = await checked(
        'runs.import',
        sent.then((response) => response.json()),
      );
      progressOf.delete(requestId);
      return answer;
    },
    subscribe(listener) {
      listeners.add(listener);
      if (!source) {
        source = new EventSource(`${base}events`);
        source.onmessage = onMessage;
      }
      return () => {
        listeners.delete(listener);
        if (listeners.size === 0) {
          source?.close();
          source = null;
        }
      };
    },
  };
}
