import type { Session, WebContents } from 'electron';
import { isWorkbench } from './app-protocol.ts';
import type { ElectronApi } from './electron-api.ts';

/** No window goes anywhere but the workbench, opens another, or holds a guest page. */
export function lockNavigation({ app }: Pick<ElectronApi, 'app'>): void {
  app.on('web-contents-created', (_, contents: WebContents) => {
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
    contents.on('will-frame-navigate', (event) => {
      if (!isWorkbench(event.url)) event.preventDefault();
    });
    contents.on('will-redirect', (event) => {
      if (!isWorkbench(event.url)) event.preventDefault();
    });
    contents.on('will-attach-webview', (event) => event.preventDefault());
  });
}

/** Denies whatever a page may ask leave for: none of the screens needs a camera, a place or a device. */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer({}));
}

/** Schemes that stay inside the program. */
const ownSchemes = new Set(['blob:', 'data:', 'devtools:']);

/** No request leaves the program, whatever a page tries: it works without a network, so it needs none. */
export function denyNetwork(session: Session): void {
  session.webRequest.onBeforeRequest((details, answer) => {
    const scheme = URL.canParse(details.url) ? new URL(details.url).protocol : '';
    answer({ cancel: !isWorkbench(details.url) && !ownSchemes.has(scheme) });
  });
}
