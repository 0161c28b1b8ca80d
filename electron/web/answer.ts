import type { IncomingMessage, ServerResponse } from 'node:http';
import { fail, type Result } from '../../core/result/index.ts';
import { securityHeaders } from '../screens/index.ts';
import { Refused } from './refused.ts';

/** Sends a text with our headers. A client that takes nothing of it for `stalled_ms` is dropped. */
export function answerText(
  response: ServerResponse,
  status: number,
  text: string,
  headers: Readonly<Record<string, string>> = {},
): void {
  if (response.headersSent || response.destroyed) return;
  const { req } = response;
  const isUnread = !req.complete;
  response.writeHead(status, {
    ...securityHeaders,
    'Content-Type': 'text/plain; charset=utf-8',
    'Cache-Control': 'no-store',
    'Content-Length': String(Buffer.byteLength(text)),
    ...headers,
    // The rest of a body that we refused would be read as the next request.
    ...(isUnread ? { Connection: 'close' } : {}),
  });
  response.end(req.method === 'HEAD' ? undefined : text);
  if (isUnread) response.once('finish', () => closeSoon(req));
}

/** A Result, as JSON. A problem that the world caused is an answer too, so its status is 200. */
export function answerResult(response: ServerResponse, result: Result<unknown>, status = 200): void {
  answerText(response, status, JSON.stringify(result), { 'Content-Type': 'application/json; charset=utf-8' });
}

/** What went wrong outside the host: a caller turned away, or a fault of our own. */
export function answerError(response: ServerResponse, error: unknown): void {
  if (error instanceof Refused) {
    answerResult(response, fail({ code: 'contract/refused', facts: { why: error.message } }), error.status);
  } else {
    answerResult(response, fail({ code: 'contract/internal', facts: { detail: String(error) } }), 500);
  }
}

function closeSoon(request: IncomingMessage): void {
  // At once would reset the connection before the client has read why.
  setTimeout(() => request.socket.destroy(), 250).unref();
}
