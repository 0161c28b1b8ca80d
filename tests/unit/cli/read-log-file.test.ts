import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { readLogFile } from '../../../electron/cli/read-log-file.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

let place: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  place = temporaryFolder();
});
afterEach(() => place.remove());

describe('a log read straight from its file', () => {
  it('is what it is in one piece, over several parts', async () => {
    const row = (i: number) => `${(i / 100).toFixed(2)},${2000 + ((i * 7919) % 4001)},${i % 997}.${i % 10}`;
    const text = `Time (s),Engine Speed (rpm),Thing\n${Array.from({ length: 250_000 }, (_, i) => row(i)).join('\n')}`;
    const path = join(place.folder, 'long.csv');
    writeFileSync(path, text);
    expect(text.length).toBeGreaterThan(4 << 20);
    const inParts = unwrap(await readLogFile(path));
    const whole = unwrap(readLog(new TextEncoder().encode(text), { file: path }));
    expect(inParts.time.length).toBe(250_000);
    for (const [c, channel] of whole.channels.entries()) {
      const read = inParts.channels[c];
      expect(read?.values.every((v, i) => Object.is(v, channel.values[i]))).toBe(true);
    }
    expect({ ...inParts, time: null, channels: null }).toEqual({ ...whole, time: null, channels: null });
  });

  it('that is not there, or is a folder, is named with what it is', async () => {
    const problem = async (path: string) => {
      const read = await readLogFile(path);
      return read.ok ? null : read.problems[0];
    };
    const missing = join(place.folder, 'none.csv');
    expect(await problem(missing)).toMatchObject({
      code: 'terminal/file-unreadable',
      where: { file: missing },
    });
    const folder = join(place.folder, 'folder.csv');
    mkdirSync(folder);
    expect(await problem(folder)).toMatchObject({ code: 'store/is-a-folder', facts: { path: folder } });
  });

  it('that is none is refused as soon as that is certain', async () => {
    const path = join(place.folder, 'picture.csv');
    writeFileSync(path, Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47]), Buffer.alloc(3 << 20, 7)]));
    const read = await readLogFile(path);
    expect(read.ok ? null : read.problems[0].code).toBe('log/not-a-table');
  });
});
