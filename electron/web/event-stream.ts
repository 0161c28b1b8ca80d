import type { ServerResponse } from 'node:http';
import type { HostEvent } from '../../core/contract/index.ts';
import { securityHeaders } from '../screens/index.ts';

/** What the host tells without being asked, to every open page, as server-sent events (WHATWG HTML, 9.2). */
export type EventStreams = {
  open(response: ServerResponse): void;
  send(event: HostEvent): void;
  close(): void;
};

/** A page that has not taken this much is gone or stuck; it gets a fresh snapshot when it comes back. */
const mostUntaken = 1024 * 1024;

export function createEventStreams(keepAlive_ms = 15_000): EventStreams {
  const open = new Set<ServerResponse>();
  const write = (text: string): void => {
    for (const response of open) {
      if (response.writableLength > mostUntaken) response.destroy();
      else response.write(text);
    }
  };
  // A comment line; without it a page whose host was killed would wait for ever.
  const clock = setInterval(() => write(': alive\n\n'), keepAlive_ms);
  clock.unref();
  return {
    open(response) {
      response.writeHead(200, {
        ...securityHeaders,
        'Content-Type': 'text/event-stream; charset=utf-8',
        'Cache-Control': 'no-store',
      });
      response.write('retry: 1000\n\n');
      open.add(response);
      response.once('close', () => open.delete(response));
    },
    send(event) {
      write(`data: ${JSON.stringify(event)}\n\n`);
    },
    close() {
      clearInterval(clock);
      for (const response of open) response.end();
    },
  };
}
