import { appendFile, mkdir, rename, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { watchFolder } from '../../../electron/store/index.ts';
import { createLineEnds } from '../../../electron/store/line-ends.ts';
import { nodeFileSystem } from '../../../electron/store/node-file-system.ts';
import { createSettleDetector } from '../../../electron/store/settle-detector.ts';
import { scratchFolder } from '../../support/store-session.ts';

const file = (name: string, size: number, modified_ms = 0) => ({ name, size, modified_ms });

describe('a log is complete', () => {
  it('when it has been quiet long enough, and is told once', () => {
    const detect = createSettleDetector(2000);
    expect(detect([], 0)).toEqual([]);
    expect(detect([file('a.csv', 10)], 1000)).toEqual([]);
    expect(detect([file('a.csv', 20)], 2000)).toEqual([]);
    expect(detect([file('a.csv', 20)], 3999)).toEqual([]);
    expect(detect([file('a.csv', 20)], 4000)).toEqual([{ ...file('a.csv', 20), isNew: true }]);
    expect(detect([file('a.csv', 20)], 9000)).toEqual([]);
  });

  it('again when it grew after that, also when only its date changed', () => {
    const detect = createSettleDetector(1000);
    detect([], 0);
    detect([file('a.csv', 10)], 1);
    expect(detect([file('a.csv', 10)], 1001)).toMatchObject([{ isNew: true }]);
    expect(detect([file('a.csv', 15)], 2000)).toEqual([]);
    expect(detect([file('a.csv', 15, 7)], 2900)).toEqual([]);
    expect(detect([file('a.csv', 15, 7)], 3900)).toEqual([{ ...file('a.csv', 15, 7), isNew: false }]);
  });

  it('not when it stood there before, unless it changes', () => {
    const detect = createSettleDetector(1000);
    expect(detect([file('old.csv', 10)], 0)).toEqual([]);
    expect(detect([file('old.csv', 10)], 5000)).toEqual([]);
    detect([file('old.csv', 11)], 6000);
    expect(detect([file('old.csv', 11)], 7000)).toMatchObject([{ isNew: false }]);
  });

  it('not while it is empty', () => {
    const detect = createSettleDetector(1000);
    detect([], 0);
    detect([file('a.csv', 0)], 1);
    expect(detect([file('a.csv', 0)], 9000)).toEqual([]);
  });

  it('removed and written anew under its name, it is new again', () => {
    const detect = createSettleDetector(1000);
    detect([], 0);
    detect([file('a.csv', 10)], 1);
    detect([file('a.csv', 10)], 2000);
    detect([], 3000);
    detect([file('a.csv', 12)], 4000);
    expect(detect([file('a.csv', 12)], 5000)).toMatchObject([{ isNew: true, size: 12 }]);
  });
});

describe('a log that ends in a whole line', () => {
  const whole = (size: number) => ({ ...file('a.csv', size), endsLine: true });
  /** Listings until the log is told; the time it took from the last change. */
  const quietNeeded = (sizes: readonly number[], every_ms: number, endsLine = true): number => {
    const detect = createSettleDetector(2500);
    detect([], 0);
    let clock = 0;
    for (const size of sizes) {
      clock += every_ms;
      detect([{ ...whole(size), endsLine }], clock);
    }
    const last = { ...whole(sizes.at(-1) ?? 0), endsLine };
    for (let quiet = 50; quiet <= 5000; quiet += 50)
      if (detect([last], clock + quiet).length > 0) return quiet;
    return Number.NaN;
  };

  it('is complete after a second where it came at once or its writer never paused', () => {
    expect(quietNeeded([50_000], 250)).toBe(1000);
    expect(quietNeeded([5000, 6000, 7000, 8000], 250)).toBe(1000);
  });

  it('waits two and a half of its writer’s own pauses, and never longer than any other log', () => {
    expect(quietNeeded([5000, 6000, 7000], 600)).toBe(1500);
    expect(quietNeeded([5000, 6000, 7000], 1000)).toBe(2500);
    expect(quietNeeded([5000, 6000, 7000], 2000)).toBe(2500);
  });

  it('waits the whole time where it breaks off within a line, or holds little more than a head', () => {
    expect(quietNeeded([50_000], 250, false)).toBe(2500);
    expect(quietNeeded([300], 250)).toBe(2500);
  });

  it('does not take the rest after it was told for a pause of its writer', () => {
    const detect = createSettleDetector(2500);
    detect([], 0);
    detect([whole(5000)], 100);
    expect(detect([whole(5000)], 1100)).toHaveLength(1);
    detect([whole(6000)], 60_000);
    expect(detect([whole(6000)], 61_000)).toMatchObject([{ isNew: false }]);
  });
});

describe('the end of a file', () => {
  it('is looked at once for each change, and is no line where nobody may read', async () => {
    const folder = await scratchFolder();
    const path = join(folder, 'a.csv');
    let reads = 0;
    const fs = {
      ...nodeFileSystem,
      openRead: (...asked: Parameters<typeof nodeFileSystem.openRead>) => {
        reads++;
        return nodeFileSystem.openRead(...asked);
      },
    };
    const endsLine = createLineEnds(fs);
    const ends = async (text: string, date: number) => {
      await writeFile(path, text);
      return endsLine(path, file('a.csv', text.length, date), true);
    };
    expect(await ends('1,2\n', 1)).toBe(true);
    expect(await ends('1,2\n', 1)).toBe(true);
    expect(reads).toBe(1);
    expect(await ends('1,2\n1,', 2)).toBe(false);
    expect(await ends('1,2\r', 3)).toBe(true);
    expect(await endsLine(join(folder, 'gone.csv'), file('gone.csv', 9), true)).toBe(false);
    expect(await endsLine(path, file('a.csv', 4, 9), false)).toBe(false);
    expect(reads).toBe(4);
  });
});

describe('watching a folder', () => {
  const quick = { interval_ms: 10, settle_ms: 400 };
  const until = async (isSo: () => boolean) => {
    for (let i = 0; i < 500 && !isSo(); i++) await new Promise((resolve) => setTimeout(resolve, 10));
    expect(isSo()).toBe(true);
  };

  it('tells a log that grows only once it is whole, and leaves other things alone', async () => {
    const folder = await scratchFolder();
    await writeFile(join(folder, 'yesterday.csv'), 'x');
    const told: { name: string; size: number }[] = [];
    const watch = unwrap(await watchFolder(folder, (log) => told.push(log), quick));
    for (const name of ['photo.jpg', '.hidden.csv', 'half.csv.part', '~lock.csv']) {
      await writeFile(join(folder, name), 'x');
    }
    await mkdir(join(folder, 'folder.csv'));
    await symlink('/etc/passwd', join(folder, 'link.csv'));
    for (let i = 0; i < 8; i++) {
      await appendFile(join(folder, 'pull 4.CSV'), 'row\n');
      await new Promise((resolve) => setTimeout(resolve, 15));
    }
    await until(() => told.length > 0);
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(told).toMatchObject([
      { name: 'pull 4.CSV', size: 32, path: join(folder, 'pull 4.CSV'), isNew: true },
    ]);
    watch.stop();
    await writeFile(join(folder, 'late.csv'), 'x');
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(told).toHaveLength(1);
  });

  it('tells when the folder goes and when it is back, and goes on', async () => {
    const folder = await scratchFolder();
    const told: string[] = [];
    const onProblem = (problem: { code: string } | null) => told.push(problem?.code ?? 'back');
    const watch = unwrap(await watchFolder(folder, (log) => told.push(log.name), { ...quick, onProblem }));
    await rename(folder, `${folder}-away`);
    await until(() => told.length === 1);
    await rename(`${folder}-away`, folder);
    await until(() => told.length === 2);
    await writeFile(join(folder, 'next.csv'), 'x');
    await until(() => told.length === 3);
    expect(told).toEqual(['store/missing', 'back', 'next.csv']);
    watch.stop();
  });

  it('of a folder that is not there is refused', async () => {
    const result = await watchFolder('/nowhere/at/all', () => undefined);
    expect(result.ok ? '' : result.problems[0].code).toBe('store/missing');
  });
});
