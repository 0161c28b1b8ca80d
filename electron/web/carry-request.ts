import { randomUUID } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { HostPort, RequestContext } from '../../core/contract/index.ts';
import { fail } from '../../core/result/index.ts';
import { answerResult } from './answer.ts';
import type { EventStreams } from './event-stream.ts';
import type { Limits } from './limits.ts';
import { readText, readUpload } from './read-body.ts';
import { Refused } from './refused.ts';

type Carrier = { readonly host: HostPort; readonly events: EventStreams; readonly limits: Limits };

/** `POST api/<name>` with the input as JSON: the host's answer as JSON. */
export async function carryRequest(
  name: string,
  request: IncomingMessage,
  response: ServerResponse,
  { host, events, limits }: Carrier,
): Promise<void> {
  if (request.headers['content-type'] !== 'application/json') throw new Refused(415, 'content-type');
  const input = parsed(await readText(request, limits));
  const result =
    input === undefined
      ? fail({ code: 'contract/input-invalid', facts: { request: name, field: '', expected: 'JSON' } })
      : await host.handle(name, input, contextOf(request, response, events));
  answerResult(response, result);
}

/** `PUT api/upload?name=...&entryId=...` with the log's bytes as body. */
export async function carryUpload(
  query: URLSearchParams,
  request: IncomingMessage,
  response: ServerResponse,
  { host, events, limits }: Carrier,
): Promise<void> {
  const meta = { name: query.get('name'), entryId: query.get('entryId') };
  const context = contextOf(request, response, events);
  answerResult(response, await host.upload(meta, readUpload(request, limits), context));
}

/** Progress goes to the page by its event stream; a page that gives up its request cancels the work. */
function contextOf(request: IncomingMessage, response: ServerResponse, events: EventStreams): RequestContext {
  const named = request.headers['x-request-id'];
  const requestId = typeof named === 'string' && /^[\w-]{1,64}$/.test(named) ? named : randomUUID();
  const cancel = new AbortController();
  response.once('close', () => {
    if (!response.writableFinished) cancel.abort();
  });
  return {
    requestId,
    signal: cancel.signal,
    progress: (share, what) => events.send({ type: 'progress', requestId, share, what }),
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
