import { type HostClient, HostEventSchema } from '../../core/contract/index.ts';
import { cancelled, checkAnswer, hostGone } from './check-answer.ts';
import type { FirstAnswer } from './first-answers.ts';

/** What the preload script hands to the page as `window.onechange`. */
export type DesktopBridge = {
  request(name: string, input: unknown, requestId: string): Promise<unknown>;
  cancel(requestId: string): void;
  /** Path of a file that the person dropped or chose; empty where it has none. */
  pathOf(file: File): string;
  subscribe(listener: (event: unknown) => void): () => void;
};

declare global {
  interface Window {
    readonly onechange?: DesktopBridge;
  }
}

/** The host in the desktop's main process, reached through the preload bridge. */
export function createDesktopClient(
  bridge: DesktopBridge,
  firstAnswer: FirstAnswer = () => null,
): HostClient {
  const ask: HostClient['request'] = async (name, input, options) => {
    const requestId = crypto.randomUUID();
    const signal = options?.signal instanceof AbortSignal ? options.signal : null;
    if (signal?.aborted) return cancelled();
    const onAbort = () => bridge.cancel(requestId);
    signal?.addEventListener('abort', onAbort, { once: true });
    try {
      return checkAnswer(name, await (firstAnswer(name) ?? bridge.request(name, input, requestId)));
    } catch {
      return hostGone();
    } finally {
      signal?.removeEventListener('abort', onAbort);
    }
  };
  return {
    request: ask,
    upload(file, entryId, options) {
      if (!(file instanceof File)) throw new Error('upload takes a browser File');
      const signal = options?.signal ? { signal: options.signal } : {};
      const { folder } = options ?? {};
      return ask('runs.import', { path: bridge.pathOf(file), entryId, folder }, signal);
    },
    subscribe(listener) {
      return bridge.subscribe((raw) => {
        const event = HostEventSchema.safeParse(raw);
        if (event.success) listener(event.data);
      });
    },
  };
}
