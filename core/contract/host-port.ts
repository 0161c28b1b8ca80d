import { z } from 'zod';
import type { Result } from '../result/index.ts';
import type { RequestInput, RequestName, RequestOutput } from './requests.ts';
import { FolderWatchSchema } from './watch.ts';

/** What the host tells without being asked. */
export const HostEventSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('session-changed'), revision: z.int() }),
  /** Null: watching has ended. */
  z.object({ type: z.literal('watch-changed'), watch: FolderWatchSchema.nullable() }),
  z.object({
    type: z.literal('progress'),
    requestId: z.string(),
    share: z.number().min(0).max(1),
    what: z.string(),
  }),
]);
export type HostEvent = z.infer<typeof HostEventSchema>;

/** Progress and cancel belong to the request. `signal` is only asked whether it is aborted. */
export type RequestContext = {
  readonly requestId: string;
  readonly signal: { readonly aborted: boolean };
  readonly progress: (share: number, what: string) => void;
};

/** A log that arrives as bytes, from a browser's upload or a window's drop. */
export type UploadMeta = { readonly name: string; readonly entryId: string | null };

/**
 * The host as the shells see it. Input is checked here whatever carried it, output before it leaves; a shell
 * only moves messages.
 */
export type HostPort = {
  handle(name: string, input: unknown, context: RequestContext): Promise<Result<unknown>>;
  upload(
    meta: unknown,
    bytes: AsyncIterable<Uint8Array>,
    context: RequestContext,
  ): Promise<Result<RequestOutput<'runs.import'>>>;
  subscribe(listener: (event: HostEvent) => void): () => void;
  close(): Promise<void>;
};

/** The host as a screen sees it, whatever carries the messages. */
export type HostClient = {
  request<N extends RequestName>(
    name: N,
    input: RequestInput<N>,
    options?: { readonly signal?: { readonly aborted: boolean } },
  ): Promise<Result<RequestOutput<N>>>;
  /** `file` is a browser File; core has no name for it. */
  upload(
    file: unknown,
    entryId: string | null,
    options?: {
      /** Folder of the session that the log is meant for; else it goes to the one that is open. */
      readonly folder?: string | undefined;
      readonly signal?: { readonly aborted: boolean };
      readonly onProgress?: (share: number) => void;
    },
  ): Promise<Result<RequestOutput<'runs.import'>>>;
  subscribe(listener: (event: HostEvent) => void): () => void;
};
