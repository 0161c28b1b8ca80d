import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { dosCodePages } from '../../../../core/log/table/dos-code-pages.ts';

const pages = Object.entries(dosCodePages);
const upperHalf = Uint8Array.from({ length: 128 }, (_, i) => 0x80 + i);
const hasIconv = spawnSync('iconv', ['--version']).status === 0;

/** Lines of the Unicode Consortium's VENDORS/MICSFT/PC/CP437.TXT, CP850.TXT, CP852.TXT: byte and code point. */
const lines: Record<string, readonly (readonly [number, number])[]> = {
  cp437: [
    [0x80, 0x00c7],
    [0x81, 0x00fc],
    [0xb0, 0x2591],
    [0xe1, 0x00df],
    [0xe6, 0x00b5],
    [0xf8, 0x00b0],
    [0xff, 0x00a0],
  ],
  cp850: [
    [0x80, 0x00c7],
    [0x9e, 0x00d7],
    [0xb5, 0x00c1],
    [0xd5, 0x0131],
    [0xe6, 0x00b5],
    [0xf8, 0x00b0],
    [0xff, 0x00a0],
  ],
  cp852: [
    [0x88, 0x0142],
    [0x98, 0x015b],
    [0xa5, 0x0105],
    [0xa9, 0x0119],
    [0xe1, 0x00df],
    [0xf8, 0x00b0],
    [0xff, 0x00a0],
  ],
};

describe('code pages of DOS', () => {
  it.each(pages)('%s has one character for each of 128 bytes, none twice', (_, upper) => {
    expect(upper).toHaveLength(128);
    expect(new Set(upper).size).toBe(128);
  });

  it.each(pages)('%s agrees with lines of the Unicode mapping file', (name, upper) => {
    for (const [byte, point] of lines[name] ?? []) expect(upper.charCodeAt(byte - 0x80)).toBe(point);
    expect(lines[name]).toHaveLength(7);
  });

  it.runIf(hasIconv).each(pages)('%s agrees with iconv of this machine in every byte', (name, upper) => {
    const run = spawnSync('iconv', ['-f', name.toUpperCase(), '-t', 'UTF-8'], { input: upperHalf });
    expect(run.stdout.toString('utf-8')).toBe(upper);
  });
});
