/**
 * Time and memory of a big log of 20 numeric columns: reading, its pulls, their power, as ratios to papaparse's bare
 * tokenising pass in the same run, by the clock and by processor time of all cores, each job in a process of its own.
 * Prints a Markdown table for the README.
 *
 *   node tests/bench/read-log.bench.ts [MB, 100] [rounds, 3] [job ...]
 *
 * The log is invented and kept in the folder for temporary files.
 */
import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readFileSync, readSync, rmSync, statSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { RequestContext } from '../../core/contract/index.ts';
import { findPulls, type Log } from '../../core/log/index.ts';
import { CarSchema, powerOfPull, unknownConditions } from '../../core/power/index.ts';
import { unwrap } from '../../core/result/index.ts';
import type { RunAnalysis } from '../../core/session/index.ts';
import { readLogFile } from '../../electron/cli/read-log-file.ts';
import { createAnalyst } from '../../electron/host/analyst.ts';
import { hireCrew } from '../../electron/host/log-crew.ts';
import { createSessionFolder, importLog, openSession } from '../../electron/store/index.ts';
import { moment, sampleSession } from '../support/store-samples.ts';
import { writeBigLog } from './big-log.ts';

type Measured = {
  readonly seconds: number;
  /** Of all cores together: steadier than the clock on a busy machine. */
  readonly cpuSeconds: number;
  readonly peak_MB: number;
  readonly detail: string;
};
/** A job may time a part of itself; else the whole of it counts. */
type Job = (
  path: string,
  timed: <T>(part: () => Promise<T> | T) => Promise<T>,
) => Promise<string> | string | Measured;

const car = CarSchema.parse({
  mass_kg: 1400,
  gearRatios: [3.4, 2, 1.4, 1, 0.8],
  finalDrive: 3.9,
  tyre: '225/45 R17',
});
const quiet: RequestContext = { requestId: 'bench', signal: { aborted: false }, progress: () => undefined };

async function papaparse(path: string, dynamicTyping: boolean): Promise<string> {
  const { default: parser } = await import('papaparse');
  let rows = 0;
  (parser as unknown as { parse(t: string, c: object): void }).parse(readFileSync(path, 'utf8'), {
    delimiter: ',',
    newline: '\n',
    dynamicTyping,
    // Chunks keep no rows, so this is tokenising and nothing else.
    chunkSize: 1 << 20,
    chunk: (result: { data: unknown[] }) => {
      rows += result.data.length;
    },
  });
  return `${rows} rows`;
}

/** As the terminal does it: in this thread, while the next part comes from the disk. */
async function readWhole(path: string): Promise<Log> {
  return unwrap(await readLogFile(path));
}

/** Measured by itself, its start and imports left out. */
function python(path: string, what: string): Measured {
  const run = spawnSync('/usr/bin/python3', [join(import.meta.dirname, 'big_log.py'), path, what], {
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error('pandas or SciPy is not installed');
  return JSON.parse(run.stdout);
}

/** As the workbench does it: in a worker, started and loaded before, since it starts while the file is copied. */
async function byWorker(path: string, timed: Parameters<Job>[1]): Promise<string> {
  const crew = hireCrew();
  const task = { runId: 'bench', record: { columns: [], pullEdits: [] }, car, conditions: unknownConditions };
  const called = { signal: quiet.signal, tellShare: () => undefined };
  const found = async (limit: number) => {
    const size = Math.min(limit, statSync(path).size);
    const file = openSync(path, 'r');
    let left = size;
    const read = async (into: Uint8Array) => {
      const length = readSync(file, into, 0, Math.min(left, into.length), null);
      left -= length;
      return length;
    };
    const source = { size, read, damage: () => null, close: async () => closeSync(file) };
    const log = unwrap(await crew.read(source, { file: path, size }, called));
    await source.close();
    return unwrap(await crew.analyse(log, { ...task, derivedChannels: [] }, called));
  };
  // What the worker does before a log comes.
  await setTimeout(3_000);
  // One second's rows, without a pull.
  await found(10_000);
  const { pulls } = await timed(() => found(Number.POSITIVE_INFINITY));
  crew.end();
  return `${pulls.length} pulls, ${pulls.filter((p) => p.power).length} with power`;
}

/** The workbench's own way, from the choice of the file: copied durably, read, pulls and power; then opened again. */
async function opening(path: string, which: 'first' | 'second', timed: Parameters<Job>[1]): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-bench-'));
  try {
    const at = unwrap(await createSessionFolder(folder, { ...sampleSession(), car }, moment(0)));
    const session = unwrap(await openSession(at, { now: moment(1) }));
    const analyst = createAnalyst(session, 'bench');
    // As while the dialog asks which entry the log goes to.
    analyst.expect(statSync(path).size);
    await setTimeout(3_000);
    const first = async () => {
      const hooks = { onCopied: analyst.expect };
      const { record } = unwrap(await importLog(session, { path }, {}, moment(2), hooks));
      return unwrap(await analyst.one(record.id, quiet));
    };
    const second = async () => {
      const again = createAnalyst(session, 'bench');
      const [id = ''] = session.runs.keys();
      return unwrap(await again.one(id, quiet));
    };
    const rows = ({ log, pulls }: RunAnalysis) => `${log.time.length} rows, ${pulls.length} pulls`;
    if (which === 'first') {
      const found = rows(await timed(first));
      await analyst.close();
      return found;
    }
    await first();
    await analyst.close();
    return rows(await timed(second));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const jobs: Record<string, Job> = {
  'papaparse, bare': (path) => papaparse(path, false),
  'papaparse, numbers': (path) => papaparse(path, true),
  'DuckDB read_csv': async (path) => {
    const { DuckDBInstance } = await import('@duckdb/node-api');
    const connection = await (await DuckDBInstance.create()).connect();
    await connection.run(`create temp table log as select * from read_csv('${path}')`);
    const result = await connection.runAndReadAll('select count(*)::int from log');
    return `${result.getRows()[0]?.[0]} rows`;
  },
  'pandas, C reader': (path) => python(path, 'read'),
  'pandas and SciPy, pulls and power': (path) => python(path, 'pulls'),
  'Onechange: reading': async (path) => `${(await readWhole(path)).time.length} rows`,
  'Onechange: and pulls': async (path) => `${findPulls(await readWhole(path), car).pulls.length} pulls`,
  'Onechange: and power, one thread': async (path) => {
    const log = await readWhole(path);
    const { pulls } = findPulls(log, car);
    const powers = pulls.filter((pull) => powerOfPull(log, pull, car, unknownConditions).ok).length;
    return `${pulls.length} pulls, ${powers} with power`;
  },
  'Onechange: and power, in a worker': byWorker,
  'Onechange: copied into a session, and all that': (path, timed) => opening(path, 'first', timed),
  'Onechange: second opening': (path, timed) => opening(path, 'second', timed),
};

async function measured(job: Job, path: string): Promise<Measured> {
  let start = performance.now();
  let cpu = process.cpuUsage();
  let end: Omit<Measured, 'detail' | 'peak_MB'> | null = null;
  const now = () => {
    const { user, system } = process.cpuUsage(cpu);
    return { seconds: (performance.now() - start) / 1000, cpuSeconds: (user + system) / 1e6 };
  };
  const detail = await job(path, async (part) => {
    start = performance.now();
    cpu = process.cpuUsage();
    const result = await part();
    end = now();
    return result;
  });
  if (typeof detail !== 'string') return detail;
  return { ...(end ?? now()), peak_MB: process.resourceUsage().maxRSS / 1024, detail };
}

const [first, ...others] = process.argv.slice(2);
const job = first ? jobs[first] : undefined;
if (job && others[0]) {
  console.log(JSON.stringify(await measured(job, others[0])));
} else {
  const megabytes = Number(first ?? 100);
  const [rounds = '3', ...wanted] = others;
  const names = Object.keys(jobs).filter((n) => wanted.length === 0 || wanted.some((w) => n.includes(w)));
  const big = join(tmpdir(), `onechange-bench-${megabytes}.csv`);
  writeBigLog(big, megabytes);
  const results = new Map<string, Measured>();
  const missing = new Map<string, string>();
  for (let round = 0; round < Number(rounds); round++) {
    for (const name of names) {
      if (missing.has(name)) continue;
      const child = spawnSync(process.execPath, [import.meta.filename, name, big], {
        encoding: 'utf8',
      });
      if (child.status !== 0) {
        missing.set(name, child.stderr.split('\n').find((line) => line.includes('Error')) ?? 'failed');
        continue;
      }
      const answer: Measured = JSON.parse(child.stdout);
      const best = results.get(name);
      // Other work on the machine only ever adds, to either time.
      results.set(name, {
        ...answer,
        seconds: Math.min(answer.seconds, best?.seconds ?? answer.seconds),
        cpuSeconds: Math.min(answer.cpuSeconds, best?.cpuSeconds ?? answer.cpuSeconds),
      });
    }
  }
  const bare = results.get('papaparse, bare');
  const share = (a: number, b: number | undefined) => (b === undefined ? '' : (a / b).toFixed(2));
  const load = loadavg()[0]?.toFixed(1);
  console.log(`${megabytes} MB, 20 columns, each the best of ${rounds}; load ${load}\n`);
  console.log('| job | clock | processor | peak memory | found |\n| --- | ---: | ---: | ---: | --- |');
  for (const [name, { seconds, cpuSeconds, peak_MB, detail }] of results)
    console.log(
      `| ${name} | ${share(seconds, bare?.seconds)} (${seconds.toFixed(2)} s) | ` +
        `${share(cpuSeconds, bare?.cpuSeconds)} (${cpuSeconds.toFixed(2)} s) | ` +
        `${peak_MB.toFixed(0)} MB | ${detail} |`,
    );
  for (const [name, why] of missing) console.log(`| ${name} | not run: ${why} | | | |`);
}
