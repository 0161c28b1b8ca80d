import { spawnSync } from 'node:child_process';
import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createLogReader, findPulls } from '../../core/log/index.ts';
import { CarSchema, powerOfPull, unknownConditions } from '../../core/power/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { writeBigLog } from './big-log.ts';

/**
 * Time and memory of reading a big log, finding its pulls and their power, as ratios to papaparse's bare tokenising pass and
 * DuckDB's read_csv, each in a process of its own, best of three. Run: node tests/bench/read-log.bench.ts [MB]
 */
type Measured = {
  readonly seconds: number;
  /** Of all cores together: steadier than the clock on a busy machine. */
  readonly cpuSeconds: number;
  readonly peak_MB: number;
  readonly detail: string;
};

const jobs: Record<string, (path: string) => Promise<string> | string> = {
  papaparse: async (path) => {
    const { default: papaparse } = await import('papaparse');
    const text = readFileSync(path, 'utf8');
    // Stepping keeps no rows, so this is tokenising and nothing else.
    let rows = 0;
    (papaparse as unknown as { parse(t: string, c: object): void }).parse(text, {
      delimiter: ',',
      newline: '\n',
      chunkSize: 1 << 20,
      chunk: (result: { data: unknown[] }) => {
        rows += result.data.length;
      },
    });
    return `${rows} rows`;
  },
  duckdb: async (path) => {
    const { DuckDBInstance } = await import('@duckdb/node-api');
    const connection = await (await DuckDBInstance.create()).connect();
    await connection.run(`create temp table log as select * from read_csv('${path}')`);
    const result = await connection.runAndReadAll('select count(*)::int from log');
    return `${result.getRows()[0]?.[0]} rows`;
  },
  onechange: (path) => {
    const size = statSync(path).size;
    const reader = createLogReader({ file: path, size });
    const file = openSync(path, 'r');
    const chunk = new Uint8Array(1 << 20);
    for (let n = readSync(file, chunk); n > 0; n = readSync(file, chunk)) reader.push(chunk.subarray(0, n));
    closeSync(file);
    const log = unwrap(reader.finish());
    const car = CarSchema.parse({
      mass_kg: 1400,
      gearRatios: [3.4, 2, 1.4, 1, 0.8],
      finalDrive: 3.9,
      tyre: '225/45 R17',
    });
    const { pulls } = findPulls(log, car);
    const powers = pulls.filter((pull) => powerOfPull(log, pull, car, unknownConditions).ok).length;
    return `${log.time.length} rows, ${log.channels.length} channels, ${pulls.length} pulls, ${powers} with power`;
  },
};

const [job, path] = process.argv.slice(2);
const run = job ? jobs[job] : undefined;
if (run && path) {
  const start = performance.now();
  const cpu = process.cpuUsage();
  const detail = await run(path);
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  const answer: Measured = {
    seconds,
    cpuSeconds: (user + system) / 1e6,
    peak_MB: process.resourceUsage().maxRSS / 1024,
    detail,
  };
  console.log(JSON.stringify(answer));
} else {
  const megabytes = Number(job ?? 100);
  const big = join(tmpdir(), `onechange-bench-${megabytes}.csv`);
  writeBigLog(big, megabytes);
  const results = new Map<string, Measured>();
  for (let round = 0; round < 3; round++) {
    for (const name of Object.keys(jobs)) {
      const child = spawnSync(process.execPath, [import.meta.filename, name, big], { encoding: 'utf8' });
      if (child.status !== 0) throw new Error(child.stderr);
      const measured: Measured = JSON.parse(child.stdout);
      const best = results.get(name);
      if (!best || measured.seconds < best.seconds) results.set(name, measured);
    }
  }
  const papa = results.get('papaparse')?.seconds ?? Number.NaN;
  console.log(`${megabytes} MB, 20 columns, best of 3`);
  for (const [name, { seconds, cpuSeconds, peak_MB, detail }] of results)
    console.log(
      `${name.padEnd(10)} ${seconds.toFixed(2)} s  ${(seconds / papa).toFixed(2)} of papaparse  processor ${cpuSeconds.toFixed(2)} s  peak ${peak_MB.toFixed(0)} MB  ${detail}`,
    );
}
