import type { IncomingMessage } from 'node:http';
import { Refused } from './refused.ts';

/**
 * Throws Refused unless a request comes from our own page, judged by its parsed headers. A page of another site can make a
 * browser send requests here, and a name that was pointed at 127.0.0.1 afterwards can make them look local,
 * but neither can choose what the browser writes into Host, Origin and Sec-Fetch-Site.
 *
 * @param port the one we listen on
 */
export function admit(request: IncomingMessage, port: number): void {
  const { method = '', headers } = request;
  if (!['GET', 'HEAD', 'POST', 'PUT'].includes(method)) throw new Refused(405, 'method');
  admitHost(request, port);
  const changesThings = method === 'POST' || method === 'PUT';
  // A browser names the origin of every request that changes things, so none at all is not our page.
  if (headers.origin === undefined ? changesThings : !isOwnOrigin(headers.origin, port))
    throw new Refused(403, 'origin');
  const site = headers['sec-fetch-site'];
  // `none` is a person's own doing: an address typed, a link opened from a terminal.
  const isTyped = site === 'none' && !changesThings;
  if (site !== undefined && site !== 'same-origin' && !isTyped) throw new Refused(403, 'site');
}

/** Throws Refused unless there is exactly one Host header, naming 127.0.0.1 and our port. */
export function admitHost(request: IncomingMessage, port: number): void {
  const named = request.rawHeaders.filter((name, i) => i % 2 === 0 && name.toLowerCase() === 'host');
  const isOwn = named.length === 1 && isOwnOrigin(`http://${request.headers.host}`, port);
  if (!isOwn) throw new Refused(403, 'host');
}

function isOwnOrigin(text: string, port: number): boolean {
  if (!URL.canParse(text)) return false;
  const url = new URL(text);
  // Compared whole: whatever else stands in it (a user, a path) makes it another text.
  return url.origin === `http://127.0.0.1${port === 80 ? '' : `:${port}`}` && isBare(url, text);
}

function isBare(url: URL, text: string): boolean {
  return text === url.origin || text === `${url.origin}:80`;
}
