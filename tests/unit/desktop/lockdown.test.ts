import { expect, it } from 'vitest';
import {
  denyNetwork,
  denyPermissions,
  denyWindowPermissions,
  lockNavigation,
} from '../../../electron/desktop/lockdown.ts';
import { DoubleContents, doubleSession, electronDouble } from '../../support/electron-double.ts';

const elsewhere = [
  'https://attacker.example/',
  'http://127.0.0.1:8080/',
  'file:///etc/passwd',
  'javascript:alert(1)',
  'data:text/html,<script>1</script>',
  'app://workbench.attacker.example/',
  'app://other/',
  'app:workbench',
  'https://app/workbench',
  'app://user@attacker.example/workbench',
  'about:blank',
  '',
];

function contentsOf() {
  const double = electronDouble();
  lockNavigation(double.electron);
  const contents = new DoubleContents(1);
  double.app.emit('web-contents-created', {}, contents);
  return contents;
}

/** Whether the shell let an event of the contents take its course. */
function isLet(contents: DoubleContents, name: string, url: string): boolean {
  let isPrevented = false;
  contents.emit(name, { url, preventDefault: () => (isPrevented = true) });
  return !isPrevented;
}

it.each(['will-frame-navigate', 'will-redirect'])('%s leads to the workbench and nowhere else', (name) => {
  const contents = contentsOf();
  expect(isLet(contents, name, 'app://workbench/')).toBe(true);
  expect(isLet(contents, name, 'app://workbench/index.html#bench')).toBe(true);
  for (const url of elsewhere) expect(isLet(contents, name, url), url).toBe(false);
});

it('no page opens another window or holds a guest page', () => {
  const contents = contentsOf();
  for (const url of ['app://workbench/', ...elsewhere])
    expect(contents.openHandler?.({ url })).toEqual({ action: 'deny' });
  expect(isLet(contents, 'will-attach-webview', 'app://workbench/')).toBe(false);
});

it('no page gets leave for anything', () => {
  const session = doubleSession();
  denyPermissions(session as never);
  const answers: unknown[] = [];
  for (const permission of [
    'media',
    'geolocation',
    'notifications',
    'fileSystem',
    'serial',
    'clipboard-read',
  ]) {
    session.kept.permissionRequest?.(...([{}, permission, (one: unknown) => answers.push(one)] as never[]));
    answers.push(session.kept.permissionCheck?.(...([{}, permission] as never[])));
  }
  answers.push(session.kept.devicePermission?.(...([{}] as never[])));
  expect(answers).toEqual(Array(13).fill(false));
  let media: unknown;
  session.kept.displayMedia?.(...([{}, (one: unknown) => (media = one)] as never[]));
  expect(media).toEqual({});
});

it('the workbench itself may fill the screen and keep it lit, and nothing more', () => {
  const session = doubleSession();
  denyWindowPermissions(session as never);
  const isGiven = (permission: string, url: string): boolean => {
    let request: unknown;
    session.kept.permissionRequest?.(
      ...([{}, permission, (one: unknown) => (request = one), { requestingUrl: url }] as never[]),
    );
    const check = session.kept.permissionCheck?.(...([{}, permission, url] as never[]));
    expect(check, `${permission} for ${url}`).toBe(request);
    return request === true;
  };
  for (const permission of ['fullscreen', 'screen-wake-lock']) {
    expect(isGiven(permission, 'app://workbench/')).toBe(true);
    for (const url of elsewhere) expect(isGiven(permission, url), url).toBe(false);
  }
  for (const permission of ['media', 'geolocation', 'fileSystem', 'pointerLock', 'keyboardLock'])
    expect(isGiven(permission, 'app://workbench/'), permission).toBe(false);
});

it('no request leaves the program', () => {
  const session = doubleSession();
  denyNetwork(session as never);
  const isLetOut = (url: string): boolean => {
    let answer: { cancel: boolean } | undefined;
    session.kept.beforeRequest?.(...([{ url }, (one: { cancel: boolean }) => (answer = one)] as never[]));
    return answer?.cancel === false;
  };
  for (const url of ['app://workbench/assets/main.js', 'blob:app://workbench/1', 'data:image/png;base64,AA'])
    expect(isLetOut(url), url).toBe(true);
  for (const url of [
    'https://attacker.example',
    'http://127.0.0.1:1/',
    'ws://attacker.example',
    'file:///etc/passwd',
    'ftp://a',
    'app://other/',
    '',
  ])
    expect(isLetOut(url), url).toBe(false);
});
