import type { IpcMainEvent, IpcMainInvokeEvent, WebContents } from 'electron';
import type { HostPort } from '../../core/contract/index.ts';
import { fail, type Result } from '../../core/result/index.ts';
import { isWorkbench } from './app-protocol.ts';
import { channels } from './channel-names.ts';
import type { ElectronApi } from './electron-api.ts';

/**
 * Carries messages between the one window and the host. The only file that listens to a window: each message
 * is taken from the workbench's own top frame in that window, and from nobody else.
 *
 * @param windowContents the window of the moment, or undefined while there is none
 */
export function openWindowChannel(
  { ipcMain }: Pick<ElectronApi, 'ipcMain'>,
  host: HostPort,
  windowContents: () => WebContents | undefined,
): () => void {
  const running = new Map<string, AbortController>();

  const isOwn = (event: IpcMainEvent | IpcMainInvokeEvent): boolean => {
    const contents = windowContents();
    if (!contents || event.sender.id !== contents.id) return false;
    const frame = event.senderFrame;
    return frame !== null && frame.parent === null && isWorkbench(frame.url);
  };
  const send = (event: unknown): void => {
    const contents = windowContents();
    if (contents && !contents.isDestroyed()) contents.send(channels.event, event);
  };

  ipcMain.handle(
    channels.request,
    async (event, name: unknown, input: unknown, id: unknown): Promise<Result<unknown>> => {
      if (!isOwn(event)) return fail({ code: 'contract/refused', facts: { why: 'sender' } });
      if (typeof name !== 'string' || !isRequestId(id) || running.has(id))
        return fail({ code: 'contract/refused', facts: { why: 'message' } });
      const cancel = new AbortController();
      running.set(id, cancel);
      try {
        return await host.handle(name, input, {
          requestId: id,
          signal: cancel.signal,
          // The host tells progress to all its listeners, and the window is one.
          progress: () => {},
        });
      } catch (error) {
        return fail({ code: 'contract/internal', facts: { detail: String(error) } });
      } finally {
        running.delete(id);
      }
    },
  );
  ipcMain.on(channels.cancel, (event, id: unknown) => {
    if (isOwn(event) && isRequestId(id)) running.get(id)?.abort();
  });
  const unsubscribe = host.subscribe(send);

  return () => {
    unsubscribe();
    for (const cancel of running.values()) cancel.abort();
    ipcMain.removeHandler(channels.request);
    ipcMain.removeAllListeners(channels.cancel);
  };
}

function isRequestId(id: unknown): id is string {
  return typeof id === 'string' && /^[\w-]{1,64}$/.test(id);
}
