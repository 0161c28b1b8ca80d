import { spawn } from 'node:child_process';

/** Whether a window could be seen here: always on Windows and macOS, with a display server elsewhere. */
export function hasDisplay(
  platform: NodeJS.Platform = process.platform,
  env: Readonly<Record<string, string | undefined>> = process.env,
): boolean {
  if (platform === 'win32' || platform === 'darwin') return true;
  return Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/** Opens a link in the person's browser. That it did not open is no error: the link stands in the terminal. */
export function openInBrowser(link: string, platform: NodeJS.Platform = process.platform): void {
  const [command, ...args] =
    platform === 'win32'
      ? // `start` is part of the shell; the empty word is the title it expects first.
        ['cmd', '/c', 'start', '""', link]
      : [platform === 'darwin' ? 'open' : 'xdg-open', link];
  const child = spawn(command as string, args, { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}
