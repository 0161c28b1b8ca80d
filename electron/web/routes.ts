import { createReadStream } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { pipeline } from 'node:stream/promises';
import type { HostPort } from '../../core/contract/index.ts';
import { type BuiltFile, nameInUrl, securityHeaders } from '../screens/index.ts';
import { admit, admitHost } from './admission.ts';
import { answerText } from './answer.ts';
import { carryRequest, carryUpload } from './carry-request.ts';
import type { EventStreams } from './event-stream.ts';
import type { Keys } from './keys.ts';
import type { Limits } from './limits.ts';
import { Refused } from './refused.ts';

export type Site = {
  readonly host: HostPort;
  readonly keys: Keys;
  readonly files: ReadonlyMap<string, BuiltFile>;
  /** index.html, with what is going to be seen in it. */
  readonly page: () => Promise<string>;
  readonly events: EventStreams;
  readonly limits: Limits;
  readonly port: number;
};

/**
 * Answers one request, or throws Refused. Whoever is turned away learns in a word why, and nothing about what
 * is here.
 */
export async function route(site: Site, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const url = ownUrl(request);
  if (url.pathname === '/enter') {
    enter(site, url, request, response);
    return;
  }
  admit(request, site.port);
  if (!site.keys.admits(request)) throw new Refused(401, 'key');
  const name = nameInUrl(url.pathname, site.keys.base);
  if (name === undefined) throw new Refused(404, 'path');
  if (name === 'events' && request.method === 'GET') site.events.open(response);
  else if (name === 'upload' && request.method === 'PUT')
    await carryUpload(url.searchParams, request, response, site);
  else if (name.startsWith('api/') && request.method === 'POST')
    await carryRequest(name.slice('api/'.length), request, response, site);
  else await builtFile(site, name, request, response);
}

/** The form `GET http://elsewhere/` is for proxies. */
function ownUrl(request: IncomingMessage): URL {
  const target = request.url ?? '';
  const base = 'http://127.0.0.1';
  if (!target.startsWith('/') || !URL.canParse(target, base)) throw new Refused(400, 'target');
  return new URL(target, base);
}

/** Exchanges the one-time token for the cookie, then goes on to the workbench. */
function enter({ keys, port }: Site, url: URL, request: IncomingMessage, response: ServerResponse): void {
  admitHost(request, port);
  if (request.method !== 'GET') throw new Refused(405, 'method');
  // A browser that loads a link ahead of the click must not use the token up.
  const purpose = `${request.headers['sec-purpose'] ?? ''} ${request.headers.purpose ?? ''}`;
  if (/prefetch|prerender|preview/.test(purpose)) throw new Refused(403, 'prefetch');
  const cookie = keys.exchange(url.searchParams.get('token') ?? '');
  if (!cookie) throw new Refused(401, 'key');
  // A redirect would still count as coming from whoever linked here, and a strict cookie would stay behind.
  // A page of our own that goes on by itself does not.
  const page = [
    '<!doctype html><meta charset="utf-8"><title>Onechange</title>',
    // An empty icon, or the browser would ask for one at the root, where nobody is let in.
    '<link rel="icon" href="data:,">',
    `<meta http-equiv="refresh" content="0;url=${keys.base}">`,
  ].join('');
  answerText(response, 200, page, { 'Content-Type': 'text/html; charset=utf-8', 'Set-Cookie': cookie });
}

async function builtFile(
  { files, page }: Site,
  name: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') throw new Refused(405, 'method');
  const found = files.get(name);
  if (!found) throw new Refused(404, 'path');
  if (request.method === 'HEAD') {
    answerText(response, 200, '', { 'Content-Type': found.contentType });
    return;
  }
  if (found === files.get('')) {
    answerText(response, 200, await page(), { 'Content-Type': found.contentType });
    return;
  }
  const stream = createReadStream(found.path);
  stream.once('open', () =>
    response.writeHead(200, {
      ...securityHeaders,
      'Content-Type': found.contentType,
      'Cache-Control': found.isHashed ? 'private, max-age=31536000, immutable' : 'no-store',
    }),
  );
  try {
    await pipeline(stream, response);
  } catch {
    // Built anew under us; where the page went away while it was sent nobody reads this.
    throw new Refused(404, 'path');
  }
}
