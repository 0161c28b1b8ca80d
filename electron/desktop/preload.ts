import { contextBridge, type IpcRendererEvent, ipcRenderer, webUtils } from 'electron';
import { channels } from './channel-names.ts';

/**
 * All that the page can reach: four functions, none of which takes a channel's name. The page has no Node and
 * no Electron.
 */
contextBridge.exposeInMainWorld('onechange', {
  request: (name: unknown, input: unknown, requestId: unknown) =>
    ipcRenderer.invoke(channels.request, name, input, requestId),
  cancel: (requestId: unknown) => ipcRenderer.send(channels.cancel, requestId),
  pathOf: (file: File) => webUtils.getPathForFile(file),
  subscribe: (listener: (event: unknown) => void) => {
    const hear = (_: IpcRendererEvent, event: unknown): void => listener(event);
    ipcRenderer.on(channels.event, hear);
    return () => ipcRenderer.off(channels.event, hear);
  },
});
