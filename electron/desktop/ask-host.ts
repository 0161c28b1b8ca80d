import { randomUUID } from 'node:crypto';
import type { HostPort, RequestInput, RequestName, RequestOutput } from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';

/** Asks the host on behalf of the shell itself: its menu, a dropped folder, a second start. */
export async function askHost<N extends RequestName>(
  host: HostPort,
  name: N,
  input: RequestInput<N>,
): Promise<Result<RequestOutput<N>>> {
  const context = { requestId: randomUUID(), signal: { aborted: false }, progress: () => {} };
  return (await host.handle(name, input, context)) as Result<RequestOutput<N>>;
}
