import type {
  HostEvent,
  HostPort,
  RequestContext,
  RequestInput,
  RequestName,
  RequestOutput,
  Snapshot,
} from '../../core/contract/index.ts';
import { type Result, unwrap } from '../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../../electron/host/index.ts';

const context: RequestContext = { requestId: 't', signal: { aborted: false }, progress: () => undefined };

/** The real host for one test, with its requests typed and its events kept. */
export function askingHost(sessionsFolder: string, minuteOf: () => number = () => 0) {
  let nextId = 0;
  const events: HostEvent[] = [];
  const host: HostPort = createHost({
    version: '0.0.0',
    shell: 'web',
    sessionsFolder,
    sampleFolder: null,
    preferences: preferencesInMemory(),
    now: () => new Date(Date.UTC(2027, 2, 14, 12, minuteOf())).toISOString(),
    newId: () => `id-${nextId++}`,
    watchTiming: { interval_ms: 10, settle_ms: 400 },
  });
  host.subscribe((event) => events.push(event));
  const ask = <N extends RequestName>(name: N, input: RequestInput<N>): Promise<Result<RequestOutput<N>>> =>
    host.handle(name, input, context) as Promise<Result<RequestOutput<N>>>;
  return {
    host,
    events,
    ask,
    get: async <N extends RequestName>(name: N, input: RequestInput<N>) => unwrap(await ask(name, input)),
    codeOf: async <N extends RequestName>(name: N, input: RequestInput<N>) => {
      const answer = await ask(name, input);
      return answer.ok ? 'ok' : answer.problems[0].code;
    },
    snapshot: async (): Promise<Snapshot> => unwrap(await ask('session.get', {})) as Snapshot,
  };
}
