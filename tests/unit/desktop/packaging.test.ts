import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { packaging } from '../../../electron/desktop/packaging.ts';
import { desktopFolder } from '../../../electron/launch/run-in-window.ts';

const project = new URL('../../..', import.meta.url).pathname;

it('a packed program runs its own archive and nothing else', () => {
  expect(packaging.asar).toBe(true);
  expect(packaging.electronFuses).toMatchObject({
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
    enableCookieEncryption: true,
  });
});

it('only what was built goes along, and nothing is published', () => {
  expect(packaging.files).toEqual([
    'electron/desktop/dist/**',
    'renderer/dist/**',
    'package.json',
    'LICENSE',
    '!node_modules',
    '!**/*.map',
  ]);
  expect(packaging.publish).toBeNull();
});

it('it starts the script that the build makes, with the icon and the sample that are here', () => {
  expect(join(project, packaging.extraMetadata.main)).toBe(join(desktopFolder, 'main.mjs'));
  const png = readFileSync(join(project, String(packaging.icon)));
  // Width and height stand at bytes 16 and 20 of a PNG (ISO/IEC 15948, 11.2.2).
  expect([png.toString('latin1', 1, 4), png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([
    'PNG',
    1024,
    1024,
  ]);
  expect(existsSync(join(project, 'sample-sessions', 'fenmoor-hatch', 'session.json'))).toBe(true);
});
