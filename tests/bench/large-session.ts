// How long a large session takes to open, against a plain read of the same JSON files.
//   node tests/bench/large-session.ts [runs] [pulls a run]
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unwrap } from '../../core/result/index.ts';
import { EntrySchema, PullEditSchema } from '../../core/session/index.ts';
import {
  checkSession,
  closeSession,
  createSessionFolder,
  importLog,
  openSession,
  saveRun,
  saveSession,
} from '../../electron/store/index.ts';
import { hastyDisk } from '../support/hasty-disk.ts';
import { moment, sampleLog, sampleSession } from '../support/store-samples.ts';

/** A session of `runs` runs with `pulls` edited pulls each, one ledger entry for every four runs. */
export async function makeLargeSession(parent: string, runs: number, pulls: number): Promise<string> {
  const folder = unwrap(await createSessionFolder(parent, sampleSession('Large'), moment(0), hastyDisk));
  const open = unwrap(await openSession(folder, { now: moment(1), fs: hastyDisk }));
  const ledger = [...open.session.ledger];
  for (let n = 0; n < runs; n++) {
    const source = { name: `pull ${n}.csv`, content: sampleLog(n) };
    const { record } = unwrap(await importLog(open, source, {}, moment(n)));
    const edits = Array.from({ length: pulls }, (_, i) =>
      PullEditSchema.parse({ at_s: 10 * i + 3.25, action: 'trim', from_s: 10 * i, to_s: 10 * i + 7.5 }),
    );
    unwrap(await saveRun(open, { ...record, pullEdits: edits, note: 'dry, light wind' }, moment(n)));
    if (n % 4 === 0) {
      ledger.push(EntrySchema.parse({ id: `entry-${n}`, kind: 'boost', createdAt: moment(n) }));
    }
    ledger.at(-1)?.runs.push({ runId: record.id, from_s: null, to_s: null });
  }
  unwrap(await saveSession(open, { ...open.session, ledger }, moment(runs)));
  await closeSession(open);
  return folder;
}

/** Reads and parses the same files one after the other, as the simplest program would. */
function plainRead(folder: string): number {
  let bytes = 0;
  const read = (path: string) => {
    const text = readFileSync(path, 'utf8');
    bytes += text.length;
    JSON.parse(text);
  };
  read(join(folder, 'session.json'));
  for (const id of readdirSync(join(folder, 'runs'))) read(join(folder, 'runs', id, 'run.json'));
  return bytes;
}

type Cost = { wall_ms: number; processor_ms: number };

async function costOf(action: () => unknown): Promise<Cost> {
  const wall = performance.now();
  const before = process.cpuUsage();
  await action();
  const { user, system } = process.cpuUsage(before);
  return { wall_ms: performance.now() - wall, processor_ms: (user + system) / 1000 };
}

export type LargeSessionTimes = {
  readonly runs: number;
  readonly open: Cost;
  readonly plain: Cost;
  /** Of processor time: a busy machine stretches the clock, not the work. */
  readonly ratio: number;
};

const none = (): Cost => ({ wall_ms: Number.POSITIVE_INFINITY, processor_ms: Number.POSITIVE_INFINITY });

function keepLeast(least: Cost, cost: Cost): void {
  least.wall_ms = Math.min(least.wall_ms, cost.wall_ms);
  least.processor_ms = Math.min(least.processor_ms, cost.processor_ms);
}

/** Opening and plain reading in turn on one warm folder; the best of each counts. */
export async function measureOpening(folder: string, tries: number): Promise<LargeSessionTimes> {
  let runs = 0;
  const [open, plain] = [none(), none()];
  for (let i = 0; i < tries; i++) {
    keepLeast(plain, await costOf(() => plainRead(folder)));
    const cost = await costOf(async () => {
      const session = unwrap(await openSession(folder, { now: moment(9) }));
      runs = session.runs.size;
      await closeSession(session);
    });
    keepLeast(open, cost);
  }
  return { runs, open, plain, ratio: open.processor_ms / plain.processor_ms };
}

if (import.meta.main) {
  const [runs = 500, pulls = 10] = process.argv.slice(2).map(Number);
  const parent = mkdtempSync(join(tmpdir(), 'large-'));
  try {
    const folder = await makeLargeSession(parent, runs, pulls);
    const { open, plain, ratio } = await measureOpening(folder, 15);
    const shown = ({ wall_ms, processor_ms }: Cost) =>
      `${wall_ms.toFixed(1)} ms (${processor_ms.toFixed(1)} ms of processor)`;
    console.log(`${runs} runs, ${runs * pulls} pulls`);
    console.log(`plain read  ${shown(plain)}`);
    console.log(`open        ${shown(open)}, ratio ${ratio.toFixed(2)}`);
    const check = await costOf(async () => unwrap(await checkSession(folder)));
    console.log(`check       ${shown(check)}`);
  } finally {
    rmSync(parent, { recursive: true, force: true });
  }
}
