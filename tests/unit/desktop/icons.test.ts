import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { icoFile } from '../../../electron/desktop/ico-file.ts';
import { packaging } from '../../../electron/desktop/packaging.ts';

const project = join(import.meta.dirname, '..', '..', '..');

/** Width and height stand at bytes 16 and 20 of a PNG (ISO/IEC 15948, 11.2.2). */
function sizeOfPng(png: Buffer): number {
  expect(png.toString('latin1', 1, 4)).toBe('PNG');
  expect(png.readUInt32BE(20)).toBe(png.readUInt32BE(16));
  return png.readUInt32BE(16);
}

it('each picture for Linux is as large as its name says', () => {
  const folder = join(project, String(packaging.linux?.icon));
  const named = readdirSync(folder).map(
    (name) => [name, sizeOfPng(readFileSync(join(folder, name)))] as const,
  );
  for (const [name, size] of named) expect(name).toBe(`${size}x${size}.png`);
  expect(named.map(([, size]) => size).sort((a, b) => a - b)).toEqual([
    16, 24, 32, 48, 64, 128, 256, 512, 1024,
  ]);
});

it('the icon for Windows holds whole pictures where its directory points', () => {
  const ico = readFileSync(join(project, String(packaging.win?.icon)));
  // ICONDIR and ICONDIRENTRY, Microsoft, "Icons".
  expect([ico.readUInt16LE(0), ico.readUInt16LE(2)]).toEqual([0, 1]);
  const count = ico.readUInt16LE(4);
  const sizes: number[] = [];
  let end = 6 + 16 * count;
  for (let i = 0; i < count; i++) {
    const entry = ico.subarray(6 + 16 * i);
    const [length, offset] = [entry.readUInt32LE(8), entry.readUInt32LE(12)];
    expect(offset).toBe(end);
    end += length;
    const size = sizeOfPng(ico.subarray(offset, offset + length));
    expect(entry.readUInt8(0)).toBe(size % 256);
    sizes.push(size);
  }
  expect(end).toBe(ico.length);
  expect(sizes).toEqual([16, 24, 32, 48, 64, 256]);
});

it('a picture that an .ico cannot hold is refused', () => {
  expect(() => icoFile([{ size: 512, png: new Uint8Array(8) }])).toThrow('512 pixels');
});
