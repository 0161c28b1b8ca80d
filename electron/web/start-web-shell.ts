import { createServer } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import type { HostPort } from '../../core/contract/index.ts';
import { firstPage, listBuiltFiles } from '../screens/index.ts';
import { answerError } from './answer.ts';
import { createEventStreams } from './event-stream.ts';
import { createKeys } from './keys.ts';
import { defaultLimits, type Limits } from './limits.ts';
import { route, type Site } from './routes.ts';

export type WebShell = {
  readonly port: number;
  /** A link that opens the workbench once. Making a new one kills the one before. */
  newLink(): string;
  /** Ends all connections. The host stays open: whoever made it closes it. */
  close(): Promise<void>;
};

export type WebShellOptions = {
  readonly host: HostPort;
  /** The built screens. */
  readonly rendererFolder: string;
  /** 0 lets the system choose a free one. */
  readonly port?: number;
  readonly limits?: Partial<Limits>;
};

/**
 * Serves the workbench to a browser on this machine: on 127.0.0.1 alone, to whoever holds the one-time link.
 * Rejects where the port is taken or the screens are not built.
 */
export async function startWebShell(options: WebShellOptions): Promise<WebShell> {
  const limits = { ...defaultLimits, ...options.limits };
  const events = createEventStreams();
  const keys = createKeys();
  const files = listBuiltFiles(options.rendererFolder);
  if (!files.has('index.html')) throw new Error(`no index.html in ${options.rendererFolder}`);

  const server = createServer({
    headersTimeout: limits.headers_ms,
    // Bodies have limits of their own: a log of gigabytes may take longer than any one number.
    requestTimeout: 0,
    connectionsCheckingInterval: Math.min(1000, limits.headers_ms),
    maxHeaderSize: 16 * 1024,
  });
  server.maxConnections = limits.connections;
  server.timeout = limits.stalled_ms;
  const answering = new Set<Socket>();
  server.on('timeout', (socket) => {
    // A quiet connection that we owe an answer waits for us; any other has stalled or is not used any more.
    if (!answering.has(socket) || socket.writableLength > 0) socket.destroy();
  });
  // Anything that asks for another protocol is no page of ours.
  server.on('upgrade', (_, socket) => socket.destroy());
  server.on('connect', (_, socket) => socket.destroy());

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port ?? 0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  const page = firstPage(options.host, options.rendererFolder);
  const site: Site = { host: options.host, keys, files, page, events, limits, port };
  server.on('request', (request, response) => {
    const { socket } = request;
    answering.add(socket);
    response.once('close', () => answering.delete(socket));
    route(site, request, response).catch((error) => answerError(response, error));
  });
  const unsubscribe = options.host.subscribe((event) => events.send(event));

  return {
    port,
    newLink: () => `http://127.0.0.1:${port}/enter?token=${keys.issue()}`,
    async close() {
      unsubscribe();
      events.close();
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeAllConnections();
      await closed;
    },
  };
}
