import { join } from 'node:path';
import { expect, it } from 'vitest';
import { userFolders } from '../../../electron/machine/user-folders.ts';

it('settings stand where each system expects them', () => {
  const home = join('/home', 'jo');
  const settings = (platform: NodeJS.Platform, env: Record<string, string> = {}): string =>
    userFolders(platform, env, home).settings;
  expect(settings('linux')).toBe(join(home, '.config', 'onechange'));
  expect(settings('linux', { XDG_CONFIG_HOME: '/settings' })).toBe(join('/settings', 'onechange'));
  expect(settings('darwin')).toBe(join(home, 'Library', 'Application Support', 'onechange'));
  expect(settings('win32', { APPDATA: '/roaming' })).toBe(join('/roaming', 'onechange'));
});

it('new sessions go to the documents, and those of earlier versions are found in the home folder', () => {
  const home = join('/home', 'jo');
  const { sessions, listed } = userFolders('linux', {}, home);
  expect(sessions).toBe(join(home, 'Documents', 'Onechange'));
  expect(listed).toEqual([sessions, join(home, 'Onechange')]);
});
