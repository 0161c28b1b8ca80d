import { unwrap } from '../../../core/result/index.ts';
import {
  checkSession,
  closeSession,
  createSessionFolder,
  importLog,
  openSession,
  repairSession,
  saveRun,
  saveSession,
  writeChannelCache,
} from '../../../electron/store/index.ts';
import { type Chance, chanceFrom } from '../../support/chance.ts';
import { moment, sampleLog, sampleSession } from '../../support/store-samples.ts';
import type { Tally } from './campaign.ts';
import { SimulatedDisk } from './simulated-disk.ts';

const ways = ['one bit', 'three bits', 'cut off', 'zeroed block', 'junk', 'gone'] as const;
type Way = (typeof ways)[number];

/** A session with two runs, several versions of all and a cache each, closed. */
async function filled(disk: SimulatedDisk): Promise<{ folder: string; ids: string[] }> {
  disk.plant('/shop/readme.txt', new Uint8Array());
  const folder = unwrap(await createSessionFolder('/shop', sampleSession(), moment(0), disk.fs));
  const open = unwrap(await openSession(folder, { now: moment(1), fs: disk.fs }));
  const ids: string[] = [];
  for (const n of [1, 2]) {
    const source = { name: `pull ${n}.csv`, content: sampleLog(n) };
    const { record } = unwrap(await importLog(open, source, {}, moment(n)));
    unwrap(await saveRun(open, { ...record, note: `wind ${n}` }, moment(n + 2)));
    const cache = { key: 'k', header: {}, arrays: [Float64Array.of(1, 2, 3)] };
    unwrap(await writeChannelCache(open, record.id, cache));
    ids.push(record.id);
  }
  unwrap(await saveSession(open, { ...open.session, note: 'evening' }, moment(6)));
  await closeSession(open);
  return { folder, ids };
}

function damaged(content: Uint8Array, way: Way, chance: Chance): Uint8Array {
  const bytes = content.slice();
  const flip = (at: number) => {
    bytes[at] = (bytes[at] ?? 0) ^ (1 << chance.int(0, 7));
  };
  const at = chance.int(0, bytes.length - 1);
  if (way === 'one bit') flip(at);
  if (way === 'three bits') for (const part of [0, 1, 2]) flip((at + part * 17) % bytes.length);
  if (way === 'cut off') return bytes.slice(0, at);
  if (way === 'zeroed block') bytes.fill(0, at, at + 64);
  if (way === 'junk')
    for (let i = at; i < Math.min(bytes.length, at + 64); i++) bytes[i] = chance.int(0, 255);
  return bytes;
}

/**
 * Damages one file of a resting session at a time. The check must name it; the repair must bring back what
 * history or the original log can, and set the damaged file aside; everything else must be as it was.
 */
export async function damageAtRest(faults: number, seed: number): Promise<Tally> {
  const tally: Tally = { faults: 0, acknowledged: 0, lost: [] };
  const chance = chanceFrom(seed);
  const disk = new SimulatedDisk(chance);
  const { folder, ids } = await filled(disk);
  const before = disk.files(folder);
  const paths = [...before.keys()];
  const [first = '', ...rest] = paths;
  while (tally.faults < faults) {
    const path = chance.pick([first, ...rest]);
    const way = chance.pick([...ways]);
    const isVersion = path.includes('/history/');
    const isCache = path.endsWith('channels.bin');
    // That a version or a cache is gone is no damage: both are thinned and remade at will.
    if (way === 'gone' && (isVersion || isCache)) continue;
    const content = before.get(path) ?? new Uint8Array();
    const bad = damaged(content, way, chance);
    if (way === 'gone') await disk.fs.removeFile(path);
    else if (Buffer.compare(content, bad) === 0) continue;
    else disk.plant(path, bad);
    tally.faults++;
    const wrong = await lookAt(disk, folder, path, { isGone: way === 'gone', isCache, bad, before, ids });
    tally.acknowledged += paths.length;
    if (wrong.length > 0) tally.lost.push(`${way} in ${path.slice(folder.length)}: ${wrong.join('; ')}`);
    for (const now of disk.files(folder).keys()) if (!before.has(now)) await disk.fs.removeFile(now);
    for (const [at, good] of before) disk.plant(at, good);
  }
  return tally;
}

type Harm = {
  readonly isGone: boolean;
  readonly isCache: boolean;
  readonly bad: Uint8Array;
  readonly before: ReadonlyMap<string, Uint8Array>;
  readonly ids: readonly string[];
};

async function lookAt(disk: SimulatedDisk, folder: string, path: string, harm: Harm): Promise<string[]> {
  const wrong: string[] = [];
  const { fs } = disk;
  const shown = path.slice(folder.length + 1);
  const report = unwrap(await checkSession(folder, { fs }));
  const named = [...report.damage, ...report.remarks].some(
    (n) => (n.facts as { file: string }).file === shown,
  );
  if (!named) wrong.push('the check does not name it');
  if (report.isSound && !harm.isCache) wrong.push('the check calls it sound');

  const { after } = unwrap(await repairSession(folder, { now: moment(20), fs }));
  const isLog = shown.endsWith('source.csv');
  if (after.isSound === isLog) wrong.push(`after the repair: ${JSON.stringify(after.damage)}`);
  if (isLog) {
    const open = unwrap(await openSession(folder, { now: moment(21), fs }));
    const n = shown.includes(harm.ids[0] ?? '') ? 1 : 2;
    unwrap(await importLog(open, { name: 'again.csv', content: sampleLog(n) }, {}, moment(22)));
    await closeSession(open);
  }
  const now = disk.files(folder);
  const isVersion = shown.includes('history/');
  for (const [at, good] of harm.before) {
    // A damaged version goes aside and a damaged cache away; both leave the rest whole.
    if (at === path && (isVersion || harm.isCache)) continue;
    const found = now.get(at);
    if (!found || Buffer.compare(found, good) !== 0)
      wrong.push(`${at.slice(folder.length)} is not as it was`);
  }
  const isKept = [...now].some(
    ([at, content]) => at.includes('/set-aside/') && Buffer.compare(content, harm.bad) === 0,
  );
  if (!harm.isGone && !harm.isCache && !isKept) wrong.push('the damaged file was not set aside');
  return wrong;
}
