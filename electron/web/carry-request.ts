import { randomUUID } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { z } from 'zod';
import type { HostPort, RequestContext } from '../../core/contract/index.ts';
import { fail } from '../../core/result/index.ts';
import { answerResult } from './answer.ts';
import type { Limits } from './limits.ts';
import { readText, readUpload } from './read-body.ts';
import { Refused } from './refused.ts';

type Carrier = { readonly host: HostPort; readonly limits: Limits };

/** `POST api/<name>` with `{ input, requestId }` as JSON: the host's answer as JSON. */
export async function carryRequest(
  name: string,
  request: IncomingMessage,
  response: ServerResponse,
  { host, limits }: Carrier,
): Promise<void> {
  if (request.headers['content-type'] !== 'application/json') throw new Refused(415, 'content-type');
  const body = parsed(await readText(request, limits));
  if (!body.ok) {
    answerResult(
      response,
      fail({
        code: 'contract/input-invalid',
        facts: { request: name, field: '', expected: { kind: 'form', form: body.expected } },
      }),
    );
    return;
  }
  const { input, requestId } = body.message;
  answerResult(response, await host.handle(name, input, contextOf(requestId, response)));
}

/** `PUT upload?name=&entryId=&folder=&requestId=` with the log's bytes as body: the answer of `runs.import`. */
export async function carryUpload(
  query: URLSearchParams,
  request: IncomingMessage,
  response: ServerResponse,
  { host, limits }: Carrier,
): Promise<void> {
  const folder = query.get('folder') ?? undefined;
  const meta = { name: query.get('name'), entryId: query.get('entryId'), folder };
  const context = contextOf(query.get('requestId') ?? undefined, response);
  answerResult(response, await host.upload(meta, readUpload(request, limits), context));
}

/** Progress goes to the page by its event stream; a page that gives up its request cancels the work. */
function contextOf(named: string | undefined, response: ServerResponse): RequestContext {
  const requestId = RequestId.safeParse(named).data ?? randomUUID();
  const cancel = new AbortController();
  response.once('close', () => {
    if (!response.writableFinished) cancel.abort();
  });
  return {
    requestId,
    signal: cancel.signal,
    // The host tells progress to all its listeners, and the page's event stream is one.
    progress: () => {},
  };
}

const RequestId = z.string().regex(/^[\w-]{1,64}$/);
const Message = z.strictObject({ input: z.unknown(), requestId: RequestId.optional() });

type Parsed =
  | { readonly ok: true; readonly message: z.infer<typeof Message> }
  | { readonly ok: false; readonly expected: string };

function parsed(text: string): Parsed {
  try {
    const message = Message.safeParse(JSON.parse(text));
    return message.success
      ? { ok: true, message: message.data }
      : { ok: false, expected: '{ input, requestId }' };
  } catch {
    return { ok: false, expected: 'JSON' };
  }
}
