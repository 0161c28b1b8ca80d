import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unwrap } from '../../../core/result/index.ts';
import {
  checkSession,
  closeSession,
  createSessionFolder,
  importLog,
  listSessions,
  openSession,
  sha256,
  unzipSession,
  zipSession,
} from '../../../electron/store/index.ts';
import { chanceFrom } from '../../support/chance.ts';
import { moment, sampleLog, sampleSession } from '../../support/store-samples.ts';
import type { Tally } from './campaign.ts';
import { PowerCut, SimulatedDisk } from './simulated-disk.ts';

/**
 * One act that must be whole or not at all, cut at any of its operations. `prepare` runs undisturbed; `look` names
 * what is wrong afterwards, knowing whether the act was told as done.
 */
export type Act = {
  readonly name: string;
  readonly prepare: (disk: SimulatedDisk) => Promise<void>;
  readonly run: (disk: SimulatedDisk) => Promise<{ readonly ok: boolean }>;
  readonly look: (disk: SimulatedDisk, isDone: boolean) => Promise<string[]>;
};

const oldSession = join(import.meta.dirname, '../../support/fixtures/session-v0');

async function soundIn(disk: SimulatedDisk, folder: string): Promise<string[]> {
  const { fs } = disk;
  const open = await openSession(folder, { now: moment(30), fs });
  if (!open.ok) return [`does not open: ${JSON.stringify(open)}`];
  await closeSession(open.value);
  const report = await checkSession(folder, { fs });
  return report.ok && report.value.isSound ? [] : [`check: ${JSON.stringify(report)}`];
}

async function plantSession(disk: SimulatedDisk): Promise<void> {
  disk.plant('/shop/readme.txt', new Uint8Array());
  const folder = unwrap(await createSessionFolder('/shop', sampleSession(), moment(0), disk.fs));
  const open = unwrap(await openSession(folder, { now: moment(1), fs: disk.fs }));
  for (const n of [1, 2]) {
    unwrap(await importLog(open, { name: `${n}.csv`, content: sampleLog(n) }, {}, moment(n)));
  }
  await closeSession(open);
}

const create: Act = {
  name: 'creating a session',
  prepare: async (disk) => disk.plant('/shop/readme.txt', new Uint8Array()),
  run: (disk) => createSessionFolder('/shop', sampleSession(), moment(0), disk.fs),
  look: async (disk, isDone) => {
    const listed = unwrap(await listSessions(['/shop'], disk.fs));
    if (isDone && listed.length === 0) return ['it is not there'];
    const wrong = [];
    for (const { folder } of listed) wrong.push(...(await soundIn(disk, folder)));
    const again = await createSessionFolder('/shop', sampleSession(), moment(5), disk.fs);
    return again.ok ? wrong : [...wrong, 'a second try fails'];
  },
};

const migrate: Act = {
  name: 'migrating an old session',
  prepare: async (disk) => {
    for (const path of ['session.json', 'runs/first-pull/run.json', 'runs/first-pull/source.csv']) {
      disk.plant(`/shop/old/${path}`, readFileSync(join(oldSession, path)));
    }
  },
  run: async (disk) => {
    const open = await openSession('/shop/old', { now: moment(1), fs: disk.fs });
    if (open.ok) await closeSession(open.value);
    return open;
  },
  look: async (disk) => {
    const wrong = await soundIn(disk, '/shop/old');
    const original = readFileSync(join(oldSession, 'session.json'));
    const isKept = [...disk.files('/shop/old').values()].some((c) => Buffer.compare(c, original) === 0);
    return isKept ? wrong : [...wrong, 'the original is not kept'];
  },
};

const zipOut: Act = {
  name: 'packing a zip',
  prepare: async (disk) => {
    await plantSession(disk);
    disk.plant('/stick/moved.zip', new TextEncoder().encode('last week’s'));
  },
  run: (disk) => zipSession('/shop/Fenmoor hatch', '/stick/moved.zip', { now: moment(9), fs: disk.fs }),
  look: async (disk, isDone) => {
    const wrong = await soundIn(disk, '/shop/Fenmoor hatch');
    const zip = disk.files('/stick').get('/stick/moved.zip');
    const isOld = zip !== undefined && Buffer.from(zip).toString() === 'last week’s';
    if (isOld) return isDone ? [...wrong, 'the old zip stands'] : wrong;
    const back = await unzipSession('/stick/moved.zip', '/stick', { fs: disk.fs });
    return back.ok ? wrong : [...wrong, `half a zip stands: ${JSON.stringify(back)}`];
  },
};

const zipIn: Act = {
  name: 'unpacking a zip',
  prepare: async (disk) => {
    await plantSession(disk);
    disk.plant('/stick/readme.txt', new Uint8Array());
    disk.plant('/other/readme.txt', new Uint8Array());
    unwrap(await zipSession('/shop/Fenmoor hatch', '/stick/moved.zip', { now: moment(9), fs: disk.fs }));
    disk.flushAll();
  },
  run: (disk) => unzipSession('/stick/moved.zip', '/other', { fs: disk.fs }),
  look: async (disk, isDone) => {
    const listed = unwrap(await listSessions(['/other'], disk.fs));
    if (isDone && listed.length !== 1) return ['it is not there'];
    const wrong = [];
    for (const { folder } of listed) {
      wrong.push(...(await soundIn(disk, folder)));
      const sums = (at: string) =>
        [...disk.files(at)].filter(([path]) => path.endsWith('.csv')).map(([, bytes]) => sha256(bytes));
      if (sums(folder).join() !== sums('/shop/Fenmoor hatch').join()) wrong.push('its logs differ');
    }
    return wrong;
  },
};

export const acts: readonly Act[] = [create, migrate, zipOut, zipIn];

/** Cuts an act `faults` times, at operations spread over all of it, by power cut and by kill. */
export async function cutAct(act: Act, faults: number, seed: number): Promise<Tally> {
  const tally: Tally = { faults: 0, acknowledged: 0, lost: [] };
  const length = await operationsOf(act, seed);
  while (tally.faults < faults) {
    const chance = chanceFrom(seed + tally.faults);
    const disk = new SimulatedDisk(chance);
    await act.prepare(disk);
    const fault = {
      operation: chance.int(1, length),
      what: 'cut',
      after: chance.share() < 0.5,
      lasting: 0,
    };
    disk.fault = fault;
    let isDone = false;
    try {
      isDone = (await act.run(disk)).ok;
    } catch (error) {
      if (!(error instanceof PowerCut)) throw error;
    }
    if (chance.share() < 0.7) disk.loseUnflushed();
    disk.fault = null;
    disk.now_ms += 60_000;
    const wrong = await act.look(disk, isDone);
    tally.faults++;
    tally.acknowledged++;
    if (wrong.length > 0) tally.lost.push(`${act.name}, ${JSON.stringify(fault)}: ${wrong.join('; ')}`);
  }
  return tally;
}

async function operationsOf(act: Act, seed: number): Promise<number> {
  const disk = new SimulatedDisk(chanceFrom(seed));
  await act.prepare(disk);
  disk.fault = { operation: Number.POSITIVE_INFINITY, what: 'cut', after: false, lasting: 0 };
  if (!(await act.run(disk)).ok) throw new Error(`${act.name} fails undisturbed`);
  return disk.operations;
}
