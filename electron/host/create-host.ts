import { z } from 'zod';
import {
  type HostEvent,
  type HostPort,
  type RequestContext,
  type RequestName,
  type RequestOutput,
  requests,
} from '../../core/contract/index.ts';
import { expectationOf, fail, ok, type Problem, type Result } from '../../core/result/index.ts';
import { IdSchema } from '../../core/session/index.ts';
import { createHandlers, type HostSetting, importInto, onlyOn, takeWatched } from './handlers.ts';
import { createLogWatch } from './log-watch.ts';
import { lookAtLog } from './look-at-log.ts';
import { closeDesk, type Desk } from './open-desk.ts';

const UploadSchema = z.object({
  name: z.string().min(1).max(1000),
  entryId: IdSchema.nullable(),
  folder: z.string().optional(),
});

/**
 * The host: answers the contract by calling store and core. Input is checked here whatever carried it, output
 * before it leaves; what fails inside is told as our own fault and never takes the host down.
 */
export function createHost(
  setting: HostSetting,
  onFault: (error: unknown) => void = () => undefined,
): HostPort {
  const listeners = new Set<(event: HostEvent) => void>();
  const tell = (event: HostEvent) => {
    for (const listener of listeners) listener(event);
  };
  const watch = createLogWatch(
    {
      take: (path, entryId, earlier) =>
        takeWatched(desk.current, setting.preferences, path, entryId, earlier),
      look: (path) => lookAtLog(desk.current, setting.preferences, path),
      newestEntry: () => desk.current?.state().session.ledger.findLast((e) => e.state === 'kept')?.id ?? null,
    },
    setting.now,
    (state) => tell({ type: 'watch-changed', watch: state }),
    setting.watchTiming,
  );
  const desk: Desk = { current: null, watch, revision: 0 };
  const handlers = createHandlers(setting, desk, (revision) => tell({ type: 'session-changed', revision }));

  /** Progress goes to the caller's own stream as well as to every listener. */
  function telling(context: RequestContext): RequestContext {
    return {
      ...context,
      progress: (share, what) => {
        context.progress(share, what);
        tell({ type: 'progress', requestId: context.requestId, share, what });
      },
    };
  }

  async function guarded<T>(context: RequestContext, action: () => Promise<Result<T>>): Promise<Result<T>> {
    try {
      const result = await action();
      return context.signal.aborted ? fail({ code: 'contract/cancelled', facts: {} }) : result;
    } catch (error) {
      onFault(error);
      const detail = (error instanceof Error ? error.message : String(error)).split('\n')[0] ?? '';
      return fail({ code: 'contract/internal', facts: { detail } });
    }
  }

  return {
    handle: (name, input, context) => {
      if (!Object.hasOwn(requests, name)) {
        return Promise.resolve(fail({ code: 'contract/unknown-request', facts: { name } }));
      }
      return guarded(context, () => answer(name as RequestName, input, telling(context)));
    },
    upload: (meta, bytes, context) =>
      guarded(context, async () => {
        const checked = UploadSchema.safeParse(meta);
        if (!checked.success) return fail(...inputProblems('upload', checked.error));
        const { current } = desk;
        if (!current) return fail({ code: 'contract/no-session', facts: {} });
        const { name, entryId, folder } = checked.data;
        const source = { name, content: bytes };
        const done = await onlyOn(current, folder, (d) =>
          importInto(d, setting.preferences, source, entryId, telling(context)),
        );
        return done.ok ? ok(requests['runs.import'].output.parse(done.value)) : done;
      }),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: async () => {
      await closeDesk(desk);
    },
  };

  async function answer<N extends RequestName>(
    name: N,
    input: unknown,
    context: RequestContext,
  ): Promise<Result<RequestOutput<N>>> {
    const checked = requests[name].input.safeParse(input);
    if (!checked.success) return fail(...inputProblems(name, checked.error));
    // The record of handlers is typed by name; a union over names is more than the compiler follows.
    const handler = handlers[name] as (i: unknown, c: RequestContext) => Promise<Result<RequestOutput<N>>>;
    const result = await handler(checked.data, context);
    return result.ok ? ok(requests[name].output.parse(result.value) as RequestOutput<N>) : result;
  }
}

function inputProblems(request: string, error: z.ZodError): [Problem, ...Problem[]] {
  return error.issues.map(
    (issue): Problem => ({
      code: 'contract/input-invalid',
      facts: { request, field: issue.path.join('.') || request, expected: expectationOf(issue) },
    }),
  ) as [Problem, ...Problem[]];
}
