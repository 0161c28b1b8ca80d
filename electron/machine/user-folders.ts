import { homedir } from 'node:os';
import { join } from 'node:path';

export type UserFolders = {
  /** Where the preferences stand that all shells share. */
  readonly settings: string;
  /** Where new sessions go. */
  readonly sessions: string;
  /** Every folder that sessions may stand in: the one for new ones, then the one that earlier versions used. */
  readonly listed: readonly [string, ...string[]];
};

/** The person's own folders, where each system expects them. */
export function userFolders(
  platform: NodeJS.Platform = process.platform,
  env: Readonly<Record<string, string | undefined>> = process.env,
  home: string = homedir(),
): UserFolders {
  const base = {
    win32: env.APPDATA || join(home, 'AppData', 'Roaming'),
    darwin: join(home, 'Library', 'Application Support'),
    other: env.XDG_CONFIG_HOME || join(home, '.config'),
  }[platform === 'win32' || platform === 'darwin' ? platform : 'other'];
  const sessions = join(home, 'Documents', 'Onechange');
  return { settings: join(base, 'onechange'), sessions, listed: [sessions, join(home, 'Onechange')] };
}
