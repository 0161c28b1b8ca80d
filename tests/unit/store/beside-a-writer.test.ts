import { mkdir, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  checkSession,
  closeSession,
  importLog,
  listSessions,
  openSession,
  saveSession,
  sessionVersions,
  unzipSession,
  zipSession,
} from '../../../electron/store/index.ts';
import { moment, newSessionFolder, opened, sampleLog, scratchFolder } from '../../support/store-session.ts';

/** More than the history keeps, so that versions are thinned out while others look. */
const saves = 40;

describe('beside a program that writes', () => {
  it('what others read is whole, and nothing is called damaged or left over', async () => {
    const folder = await newSessionFolder();
    const scratch = await scratchFolder();
    const writer = await opened(folder);
    const count = { look: 0, check: 0, versions: 0, list: 0, zip: 0 };
    let isWriting = true;
    const keepOn = async (what: keyof typeof count, action: () => Promise<void>) => {
      for (; isWriting; count[what]++) await action();
    };

    const readers = [
      keepOn('look', async () => {
        const seen = unwrap(await openSession(folder, { now: moment(1), readOnly: true }));
        expect(seen.notices).toEqual([]);
        await closeSession(seen);
      }),
      keepOn('check', async () => {
        expect(unwrap(await checkSession(folder))).toMatchObject({ damage: [], remarks: [] });
      }),
      keepOn('versions', async () => {
        const versions = unwrap(await sessionVersions(folder));
        expect(versions.filter((version) => version.unusable !== null)).toEqual([]);
      }),
      keepOn('list', async () => {
        expect(unwrap(await listSessions([join(folder, '..')]))).toMatchObject([{ folder, canOpen: true }]);
      }),
      keepOn('zip', async () => {
        const zip = join(scratch, `${count.zip}.zip`);
        unwrap(await zipSession(folder, zip, { now: moment(1) }));
        const target = join(scratch, `${count.zip}`);
        await mkdir(target);
        unwrap(await unzipSession(zip, target));
        const [unpacked = ''] = await readdir(target);
        expect(unwrap(await checkSession(join(target, unpacked))).damage).toEqual([]);
        await rm(target, { recursive: true });
      }),
    ];
    for (let n = 1; n <= saves; n++) {
      unwrap(await saveSession(writer, { ...writer.session, note: `note ${n}` }, moment(n)));
      if (n % 10 === 0) {
        const log = { name: `pull ${n}.csv`, content: sampleLog(n) };
        unwrap(await importLog(writer, log, {}, moment(n)));
      }
    }
    isWriting = false;
    await Promise.all(readers);
    await closeSession(writer);
    for (const times of Object.values(count)) expect(times).toBeGreaterThan(0);
  });
});
