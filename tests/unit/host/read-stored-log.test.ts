import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { RequestContext } from '../../../core/contract/index.ts';
import { readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { analyseLog } from '../../../core/session/index.ts';
import { createAnalyst } from '../../../electron/host/analyst.ts';
import { hireCrew } from '../../../electron/host/log-crew.ts';
import { readStoredLog } from '../../../electron/host/read-stored-log.ts';
import { importLog, type OpenSession, readSource } from '../../../electron/store/index.ts';
import { writeBigLog } from '../../bench/big-log.ts';
import { flipBit } from '../../support/folder-contents.ts';
import { moment, newSessionFolder, opened, scratchFolder } from '../../support/store-session.ts';

const quiet: RequestContext = { requestId: 't', signal: { aborted: false }, progress: () => undefined };

/** A session with one log of so many megabytes, large enough for the worker. */
async function withLog(content: (path: string) => Promise<void> | void) {
  const open: OpenSession = await opened(await newSessionFolder());
  const path = join(await scratchFolder(), 'big.csv');
  await content(path);
  const { record } = unwrap(await importLog(open, { path }, {}, moment(2)));
  return { open, record, source: join(open.folder, 'runs', record.id, 'source.csv') };
}

describe('a large log', () => {
  it('reads in parts as it does in one piece, and tells how far it is', async () => {
    const { open, record } = await withLog((path) => writeBigLog(path, 7));
    const shares: number[] = [];
    const context = { ...quiet, progress: (share: number) => shares.push(share) };
    const parts = unwrap(await readStoredLog(open, record, context));
    const whole = unwrap(readLog(unwrap(await readSource(open, record.id)), { file: record.name }));
    expect(parts).toEqual(whole);
    expect(shares.length).toBeGreaterThanOrEqual(6);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it.each([
    ['plain numbers', (lines: string[]) => lines.join('\n')],
    ['line ends of Windows and a last row without one', (lines: string[]) => lines.join('\r\n').trimEnd()],
    [
      'remarks, a header that comes back, empty cells and words among the numbers',
      (lines: string[]) => {
        for (let i = 9000; i < lines.length; i += 4000) {
          lines[i] = '# a remark';
          lines[i + 7] = lines[0] as string;
          lines[i + 900] = (lines[i + 900] as string).replace(/,[^,]*,/, ',,');
          lines[i + 1700] = (lines[i + 1700] as string).replace(/,[^,]*,/, ',n/a,');
        }
        return lines.join('\n');
      },
    ],
  ])('of %s is read by two workers as it is by one', async (_, written) => {
    const { open, record } = await withLog(async (path) => {
      writeBigLog(path, 9);
      await writeFile(path, written((await readFile(path, 'utf8')).split('\n')));
    });
    const crew = hireCrew();
    // Once the worker for rows is at the ready.
    await setTimeout(1500);
    const whole = unwrap(readLog(unwrap(await readSource(open, record.id)), { file: record.name }));
    for (let round = 0; round < 2; round++)
      expect(unwrap(await readStoredLog(open, record, quiet, crew))).toEqual(whole);
    crew.end();
  });

  it('that was damaged on disk is told as damaged, not read', async () => {
    const { open, record, source } = await withLog((path) => writeBigLog(path, 4));
    await flipBit(source, 3_000_000);
    const found = await readStoredLog(open, record, quiet);
    expect(found.ok ? '' : found.problems[0].code).toBe('store/source-damaged');
  });

  it('that is none is refused as a small one is', async () => {
    const { open, record } = await withLog((path) => writeFile(path, 'nothing but words\n'.repeat(250_000)));
    const found = await readStoredLog(open, record, quiet);
    const whole = readLog(unwrap(await readSource(open, record.id)), { file: record.name });
    expect(found).toEqual(whole);
    expect(found.ok).toBe(false);
  });

  it('that is called off ends long before it would be read', async () => {
    const { open, record } = await withLog((path) => writeBigLog(path, 20));
    const start = performance.now();
    unwrap(await readStoredLog(open, record, quiet));
    const whole_ms = performance.now() - start;
    const signal = { aborted: false };
    let calledOff = Number.NaN;
    const context = {
      ...quiet,
      signal,
      progress: (share: number) => {
        if (share < 0.1 || signal.aborted) return;
        signal.aborted = true;
        calledOff = performance.now();
      },
    };
    const found = await readStoredLog(open, record, context);
    const took_ms = performance.now() - calledOff;
    expect(found.ok ? '' : found.problems[0].code).toBe('contract/cancelled');
    // Asked every 20 ms; what a loaded machine adds to that it adds to the reading as well.
    expect(took_ms).toBeLessThan(Math.max(100, whole_ms / 2));
  });

  it('is analysed by workers as it would be in one piece, and again as fast as it comes', async () => {
    const { open, record } = await withLog((path) => writeBigLog(path, 6));
    const analyst = createAnalyst(open, 'test');
    const shares: number[] = [];
    const context = { ...quiet, progress: (share: number) => shares.push(share) };
    const found = unwrap(await analyst.one(record.id, context));
    const { car, conditions } = open.session;
    const whole = unwrap(readLog(unwrap(await readSource(open, record.id)), { file: record.name }));
    expect(found).toEqual(analyseLog(whole, { runId: record.id, record, car, conditions }));
    expect(found.pulls.length).toBeGreaterThan(10);
    expect(found.pulls.every((p) => p.power)).toBe(true);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    await analyst.settled();
    const again = createAnalyst(open, 'test');
    expect(unwrap(await again.one(record.id, quiet)).pulls).toEqual(found.pulls);
    await analyst.close();
    await again.close();
  });

  it.each([0, 0.3, 2])('that was expected %d s ago is read as any other', async (seconds) => {
    const { open, record } = await withLog((path) => writeBigLog(path, 4));
    const analyst = createAnalyst(open, 'test');
    analyst.expect(record.size_bytes);
    // The worker has not started, is in the midst of its rehearsal, or has done with it.
    await setTimeout(1000 * seconds);
    const found = unwrap(await analyst.one(record.id, quiet));
    const { car, conditions } = open.session;
    const whole = unwrap(readLog(unwrap(await readSource(open, record.id)), { file: record.name }));
    expect(found).toEqual(analyseLog(whole, { runId: record.id, record, car, conditions }));
    await analyst.close();
  });

  it.each([0.1, 0.9])(
    'called off at a share of %d of its analysis is told so, and can be asked again',
    async (share) => {
      const { open, record } = await withLog((path) => writeBigLog(path, 20));
      const analyst = createAnalyst(open, 'test');
      const signal = { aborted: false };
      let calledOff = Number.NaN;
      const progress = (reached: number) => {
        if (reached < share || signal.aborted) return;
        signal.aborted = true;
        calledOff = performance.now();
      };
      const start = performance.now();
      const found = await analyst.one(record.id, { ...quiet, signal, progress });
      const before_ms = calledOff - start;
      const took_ms = performance.now() - calledOff;
      expect(found.ok ? '' : found.problems[0].code).toBe('contract/cancelled');
      expect(took_ms).toBeLessThan(Math.max(100, before_ms / 4));
      expect((await analyst.one(record.id, quiet)).ok).toBe(true);
      await analyst.close();
    },
    120_000,
  );

  it('called off while it is copied leaves nothing behind', async () => {
    const folder = await newSessionFolder();
    const open: OpenSession = await opened(folder);
    const path = join(await scratchFolder(), 'big.csv');
    writeBigLog(path, 6);
    const found = await importLog(open, { path }, {}, moment(2), { isCancelled: () => true });
    expect(found.ok ? '' : found.problems[0].code).toBe('contract/cancelled');
    expect(open.runs.size).toBe(0);
    expect(await readdir(join(folder, 'runs'))).toEqual([]);
  });

  it('whose file is gone says so', async () => {
    const { open, record, source } = await withLog((path) => writeBigLog(path, 4));
    await rm(source, { force: true });
    const found = await readStoredLog(open, record, quiet);
    expect(found.ok ? '' : found.problems[0].code).toBe('store/source-missing');
  });
});
