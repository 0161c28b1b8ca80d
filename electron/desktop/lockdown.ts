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

/** What the passenger's view asks for: the whole screen, and that it stays lit. */
const screenPermissions: ReadonlySet<string> = new Set(['fullscreen', 'screen-wake-lock']);

/**
 * Denies whatever a page may ask leave for: none of the screens needs a camera, a place or a device.
 *
 * @param allowed  given to the workbench's own page all the same; none by default
 */
export function denyPermissions(session: Session, allowed: ReadonlySet<string> = new Set()): void {
  const isAllowed = (permission: string, origin: string) => allowed.has(permission) && isWorkbench(origin);
  session.setPermissionRequestHandler((_contents, permission, answer, details) =>
    answer(isAllowed(permission, details?.requestingUrl ?? '')),
  );
  session.setPermissionCheckHandler((_contents, permission, origin) => isAllowed(permission, origin));
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer({}));
}

/** The same for the window itself, whose page may fill the screen and keep it lit. */
export function denyWindowPermissions(session: Session): void {
  denyPermissions(session, screenPermissions);
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
