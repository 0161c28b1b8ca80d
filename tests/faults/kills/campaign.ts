import { type ChildProcess, spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { unwrap } from '../../../core/result/index.ts';
import {
  checkSession,
  closeSession,
  createSessionFolder,
  openSession,
  unzipSession,
} from '../../../electron/store/index.ts';
import { type Chance, chanceFrom } from '../../support/chance.ts';
import { hastyDisk } from '../../support/hasty-disk.ts';
import { moment, sampleSession } from '../../support/store-samples.ts';
import { bundleWorker } from './bundle-worker.ts';
import type { KillPoint } from './killing-file-system.ts';
import { inboxOf, type Order, type Told, zipOf } from './worker.ts';

export type KillCount = {
  kills: number;
  /** Acknowledged imports and edits that were looked for again. */
  acknowledged: number;
  /** Each with what was missing. */
  readonly lost: string[];
  readonly notOpened: string[];
  /** Kills at a chosen disk operation, and at a moment of the clock. */
  atOperation: number;
  atMoment: number;
};

/** Folders are changed now and then, so that young and grown sessions are both hit. */
const killsPerFolder = 20;
const oldSession = join(import.meta.dirname, '../../support/fixtures/session-v0');

type Worker = { readonly child: ChildProcess; readonly ended: Promise<NodeJS.Signals | null> };

function startWorker(script: string): Worker {
  const child = spawn(process.execPath, [script], { stdio: ['pipe', 'pipe', 'pipe'] });
  const ended = new Promise<NodeJS.Signals | null>((resolve) =>
    child.once('exit', (_, signal) => resolve(signal)),
  );
  return { child, ended };
}

/** What must be in the folder: acknowledged by workers that were killed later. */
type Truth = {
  readonly imported: Map<string, string>;
  readonly runNotes: Map<string, string>;
  sessionNote: string;
  isZipped: boolean;
  /** A save that was begun and not acknowledged: the old or the new may stand. */
  begun: string;
};

/** Kills a working program `kills` times and looks each time whether all that it acknowledged is there. */
export async function killAgainAndAgain(kills: number, seed: number): Promise<KillCount> {
  const chance = chanceFrom(seed);
  const count: KillCount = {
    kills: 0,
    acknowledged: 0,
    lost: [],
    notOpened: [],
    atOperation: 0,
    atMoment: 0,
  };
  const parent = await mkdtemp(join(tmpdir(), 'kills-'));
  let folder = '';
  let truth: Truth = {
    imported: new Map(),
    runNotes: new Map(),
    sessionNote: '',
    isZipped: false,
    begun: '',
  };
  const script = await bundleWorker(parent);
  let next = startWorker(script);
  try {
    while (count.kills < kills) {
      if (count.kills % killsPerFolder === 0) {
        folder = await newFolder(parent, count.kills / killsPerFolder);
        truth = { imported: new Map(), runNotes: new Map(), sessionNote: '', isZipped: false, begun: '' };
      }
      const worker = next;
      next = startWorker(script);
      const order = {
        folder,
        seed: chance.int(1, 2 ** 31),
        now: moment(count.kills),
        point: pointFor(chance),
      };
      await runUntilKilled(worker, order, chance, truth);
      count.kills++;
      if (order.point) count.atOperation++;
      else count.atMoment++;
      await lookAgain(folder, truth, count);
    }
  } finally {
    next.child.kill('SIGKILL');
    await rm(parent, { recursive: true, force: true });
  }
  return count;
}

/** Every second life begins with a session of an older version, whose migration may be hit too. */
async function newFolder(parent: string, life: number): Promise<string> {
  const folder =
    life % 2 === 0
      ? unwrap(await createSessionFolder(parent, sampleSession(), moment(0)))
      : join(parent, `old ${life}`);
  if (life % 2 === 1) await cp(oldSession, folder, { recursive: true });
  await mkdir(inboxOf(folder));
  return folder;
}

function pointFor(chance: Chance): KillPoint | null {
  if (chance.share() < 0.4) return null;
  // Opening and its recovery take some 15 operations, an import some 25.
  return { operation: chance.int(1, 120), moment: chance.pick(['before', 'half', 'after']) };
}

async function runUntilKilled(
  { child, ended }: Worker,
  order: Order,
  chance: Chance,
  truth: Truth,
): Promise<void> {
  const { stdin, stdout, stderr } = child;
  if (!stdin || !stdout || !stderr) throw new Error('the worker has no pipes');
  let complaint = '';
  stderr.on('data', (part) => {
    complaint += part;
  });
  stdin.on('error', () => undefined);
  stdin.write(`${JSON.stringify(order)}\n`);
  let timer: NodeJS.Timeout | undefined;
  const kill = () => child.kill('SIGKILL');
  // Some die while they open and clear up after the one before, most while they work.
  const from: Told['told'] = chance.share() < 0.3 ? 'begins' : 'opened';
  for await (const line of createInterface({ input: stdout })) {
    const told: Told = JSON.parse(line);
    if (told.told === from && order.point === null) timer = setTimeout(kill, chance.share() * 60);
    take(told, truth);
  }
  clearTimeout(timer);
  const signal = await ended;
  if (signal !== 'SIGKILL') throw new Error(`the worker ended by itself: ${complaint}`);
}

function take(told: Told, truth: Truth): void {
  if (told.told === 'starts') truth.begun = told.note;
  if (told.told === 'imported') truth.imported.set(told.id, told.sha256);
  if (told.told === 'zipped') truth.isZipped = true;
  if (told.told === 'saved session') truth.sessionNote = told.note;
  if (told.told === 'saved run') truth.runNotes.set(told.id, told.note);
}

async function lookAgain(folder: string, truth: Truth, count: KillCount): Promise<void> {
  const result = await openSession(folder, { now: moment(count.kills) });
  if (!result.ok || result.value.readOnly) {
    count.notOpened.push(
      `kill ${count.kills}: ${JSON.stringify(result.ok ? result.value.readOnly : result)}`,
    );
    return;
  }
  const open = result.value;
  const expect = (isThere: boolean, what: string) => {
    count.acknowledged++;
    if (!isThere) count.lost.push(`kill ${count.kills}: ${what}`);
  };
  const isNote = (found: string | undefined, saved: string) => found === saved || found === truth.begun;
  expect(isNote(open.session.note, truth.sessionNote), 'session note');
  truth.sessionNote = open.session.note;
  for (const [id, hash] of truth.imported) {
    // That the bytes still have this hash is what the check below finds out.
    expect(open.runs.get(id)?.record.sha256 === hash, `run ${id}`);
  }
  for (const [id, note] of truth.runNotes) {
    const found = open.runs.get(id)?.record.note;
    expect(isNote(found, note), `note of ${id}`);
    truth.runNotes.set(id, found ?? note);
  }
  // A run may be there that was not acknowledged in time; half a one may not.
  const report = await checkSession(folder);
  expect(report.ok && report.value.isSound, `check: ${JSON.stringify(report)}`);
  const leavings = (await readdir(folder, { recursive: true })).filter((name) =>
    name.includes('.unfinished-'),
  );
  expect(leavings.length === 0, `cleanliness: ${leavings}`);
  await closeSession(open);
  const isZipThere = await stat(zipOf(folder)).then(
    () => true,
    () => false,
  );
  if (truth.isZipped) expect(isZipThere, 'zip');
  // One that was not acknowledged may stand or not, but never half.
  if (isZipThere && count.kills % 4 === 0) {
    const parent = `${folder} unpacked`;
    await mkdir(parent, { recursive: true });
    const unpacked = await unzipSession(zipOf(folder), parent, { fs: hastyDisk });
    expect(unpacked.ok, `wholeness of the zip: ${JSON.stringify(unpacked)}`);
    await rm(parent, { recursive: true });
  }
}
