import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { HostClient, HostPort } from '../../core/contract/index.ts';
import { channels } from '../../electron/desktop/channel-names.ts';
import { openWindowChannel } from '../../electron/desktop/window-channel.ts';
import { startWebShell } from '../../electron/web/index.ts';
import { checkAnswer } from '../../renderer/host/check-answer.ts';
import { createDesktopClient } from '../../renderer/host/desktop-client.ts';
import { createWebClient } from '../../renderer/host/web-client.ts';
import { DoubleContents, electronDouble } from './electron-double.ts';
import { FetchEventSource } from './event-source.ts';

/** What stands between a screen and the host: the client a screen uses, over a real carrier of messages. */
export type Carrier = {
  readonly client: HostClient;
  /** A log on this machine, as the screens of this shell get hold of it. */
  file(name: string, text: string): File;
  close(): Promise<void>;
};

/** No shell at all: what the others are measured against. */
export async function direct(host: HostPort): Promise<Carrier> {
  const client: HostClient = {
    request: async (name, input, options) =>
      checkAnswer(
        name,
        await host.handle(name, input, {
          requestId: 'direct',
          signal: options?.signal ?? { aborted: false },
          progress: () => {},
        }),
      ),
    upload: async (file, entryId, options) => {
      const { name } = file as File;
      const context = {
        requestId: 'direct',
        signal: options?.signal ?? { aborted: false },
        progress: () => {},
      };
      return checkAnswer(
        'runs.import',
        await host.upload({ name, entryId }, (file as File).stream(), context),
      );
    },
    subscribe: (listener) => host.subscribe(listener),
  };
  return { client, file: (name, text) => new File([text], name), close: async () => {} };
}

/** Through the loopback server, as a page that followed the one-time link. */
export async function web(host: HostPort): Promise<Carrier> {
  const rendererFolder = mkdtempSync(join(tmpdir(), 'onechange-carrier-'));
  writeFileSync(join(rendererFolder, 'index.html'), '<!doctype html>');
  const shell = await startWebShell({ host, rendererFolder });
  const origin = `http://127.0.0.1:${shell.port}`;
  const entered = await fetch(shell.newLink());
  const cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const base = origin + (/url=(\/[^"]+)"/.exec(await entered.text())?.[1] ?? '');

  // What a browser adds by itself to the requests of a page of this origin.
  const plain = globalThis.fetch;
  const plainSource = globalThis.EventSource;
  globalThis.fetch = (input, init) =>
    plain(input, {
      ...init,
      headers: { ...(init?.headers as object), cookie, origin, 'sec-fetch-site': 'same-origin' },
      ...(init?.body ? { duplex: 'half' } : {}),
    } as RequestInit);
  globalThis.EventSource = FetchEventSource as unknown as typeof EventSource;
  return {
    client: createWebClient(base),
    file: (name, text) => new File([text], name),
    async close() {
      globalThis.fetch = plain;
      globalThis.EventSource = plainSource;
      await shell.close();
    },
  };
}

/** Through the desktop's channel, with its values cloned as they are between two processes. */
export async function desktop(host: HostPort): Promise<Carrier> {
  const double = electronDouble();
  const contents = new DoubleContents(1);
  const folder = mkdtempSync(join(tmpdir(), 'onechange-carrier-'));
  const paths = new Map<File, string>();
  const listeners = new Set<(event: unknown) => void>();
  contents.send = (_channel: unknown, event: unknown) => {
    for (const listener of listeners) listener(structuredClone(event));
  };
  const closeChannel = openWindowChannel(double.electron, host, () => contents as never);
  const event = { sender: { id: 1 }, senderFrame: { url: 'app://workbench/', parent: null } };
  const client = createDesktopClient({
    request: async (...args) => {
      const handler = double.ipcHandlers.get(channels.request);
      return structuredClone(await handler?.(...([event, ...structuredClone(args)] as never[])));
    },
    cancel: (id) => double.ipcMain.emit(channels.cancel, event, id),
    pathOf: (file) => paths.get(file) ?? '',
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  });
  return {
    client,
    file(name, text) {
      const file = new File([text], name);
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, name), text);
      paths.set(file, join(folder, name));
      return file;
    },
    async close() {
      closeChannel();
    },
  };
}
