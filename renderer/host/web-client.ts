import {
  type HostClient,
  type HostEvent,
  HostEventSchema,
  type RequestName,
  type RequestOutput,
} from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';
import { cancelled, checkAnswer, hostGone } from './check-answer.ts';

/**
 * The host over loopback HTTP, beside the page itself; the cookie that the first page set goes along.
 *
 *   POST api/<name>         JSON {input, requestId}   -> Result as JSON; an aborted fetch cancels the request
 *   PUT  upload?name=&entryId=&requestId=   bytes    -> Result of runs.import
 *   GET  events            server-sent events, each `data:` one HostEvent as JSON
 */
export function createWebClient(base = './'): HostClient {
  const listeners = new Set<(event: HostEvent) => void>();
  const progressOf = new Map<string, (share: number) => void>();
  let source: EventSource | null = null;

  const onMessage = (message: MessageEvent<string>) => {
    const event = HostEventSchema.safeParse(JSON.parse(message.data));
    if (!event.success) return;
    if (event.data.type === 'progress') progressOf.get(event.data.requestId)?.(event.data.share);
    for (const listener of listeners) listener(event.data);
  };

  const send = async <N extends RequestName>(
    name: N,
    url: string,
    init: RequestInit,
  ): Promise<Result<RequestOutput<N>>> => {
    try {
      const response = await fetch(url, { ...init, credentials: 'same-origin' });
      return checkAnswer(name, await response.json());
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return cancelled();
      return hostGone();
    }
  };

  return {
    request(name, input, options) {
      const signal = options?.signal instanceof AbortSignal ? { signal: options.signal } : {};
      return send(name, `${base}api/${name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ input, requestId: crypto.randomUUID() }),
        ...signal,
      });
    },
    async upload(file, entryId, options) {
      if (!(file instanceof File)) throw new Error('upload takes a browser File');
      const requestId = crypto.randomUUID();
      const query = new URLSearchParams({ name: file.name, requestId });
      if (entryId) query.set('entryId', entryId);
      if (options?.onProgress) progressOf.set(requestId, options.onProgress);
      const signal = options?.signal instanceof AbortSignal ? { signal: options.signal } : {};
      const answer = await send('runs.import', `${base}upload?${query}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/octet-stream' },
        body: file,
        ...signal,
      });
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
