import type { HostEvent, HostPort, RequestContext } from '../../core/contract/index.ts';
import { ok, type Result } from '../../core/result/index.ts';

/** A host that answers with what it was asked, and keeps what reached it. */
export type DoubleHost = HostPort & {
  readonly asked: { readonly name: string; readonly input: unknown; readonly context: RequestContext }[];
  /** Bytes of uploads that arrived whole. */
  readonly uploaded: { readonly meta: unknown; readonly bytes: number }[];
  emit(event: HostEvent): void;
};

export function doubleHost(
  answer: (
    name: string,
    input: unknown,
    context: RequestContext,
  ) => Promise<Result<unknown>> | Result<unknown> = (name, input) => ok({ name, input }),
): DoubleHost {
  const listeners = new Set<(event: HostEvent) => void>();
  const asked: DoubleHost['asked'] = [];
  const uploaded: DoubleHost['uploaded'] = [];
  return {
    asked,
    uploaded,
    emit: (event) => {
      for (const listener of listeners) listener(event);
    },
    async handle(name, input, context) {
      asked.push({ name, input, context });
      return answer(name, input, context);
    },
    async upload(meta, bytes) {
      let length = 0;
      for await (const chunk of bytes) length += chunk.length;
      uploaded.push({ meta, bytes: length });
      return ok({ bytes: length }) as unknown as Awaited<ReturnType<HostPort['upload']>>;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async close() {},
  };
}
