import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { packaging } from '../desktop/packaging.ts';
import { buildRenderer } from './build-renderer.ts';
import { desktopBinary, fetchDesktopBinary } from './desktop-binary.ts';
import { projectFolder } from './pinned-node.mjs';

const say = (line: string): void => console.log(line);

/** `npm run package`: packs the desktop shell for this system, or says what it needs to. */
function pack(words: readonly string[]): number {
  if (!buildRenderer(say)) return 1;
  const binary = desktopBinary() ?? fetchDesktopBinary(say, true);
  if (!binary) {
    say(
      [
        "Nothing was packed: Electron's binary is not to be had on this machine.",
        'It comes from github.com, not from the package registry. One of these helps:',
        '  a machine that reaches github.com',
        '  ELECTRON_MIRROR set to a mirror that this machine reaches',
        '  ELECTRON_OVERRIDE_DIST_PATH set to a folder with the unpacked binary of the version in package.json',
        'The tools that make installers come from there too: ELECTRON_BUILDER_BINARIES_MIRROR names their mirror.',
      ].join('\n'),
    );
    return 1;
  }
  // electron-builder reads its settings from a file and runs no TypeScript.
  const config = join(mkdtempSync(join(tmpdir(), 'onechange-packaging-')), 'packaging.json');
  writeFileSync(config, JSON.stringify({ ...packaging, electronDist: dirname(binary) }));
  const builder = join(projectFolder, 'node_modules', 'electron-builder', 'cli.js');
  const { status } = spawnSync(
    process.execPath,
    [builder, '--config', config, '--publish', 'never', ...words],
    {
      cwd: projectFolder,
      stdio: 'inherit',
    },
  );
  if (status !== 0) say('Packing did not come to its end; the lines above say where it stopped.');
  return status ?? 1;
}

process.exitCode = pack(process.argv.slice(2));
