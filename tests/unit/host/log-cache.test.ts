import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { RequestContext } from '../../../core/contract/index.ts';
import { readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { cacheOfLog, logOfCache, readerFingerprint } from '../../../electron/host/log-cache.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';

const loose = new URL('../../../sample-sessions/loose-logs/before-1.00-bar.csv', import.meta.url);
const context: RequestContext = { requestId: 't', signal: { aborted: false }, progress: () => undefined };

let place: ReturnType<typeof temporaryFolder>;

beforeEach(() => {
  place = temporaryFolder();
});
afterEach(() => place.remove());

async function ledgerOf(folder: string): Promise<unknown> {
  const host = createHost({
    version: '0.0.0',
    shell: 'web',
    sessionsFolder: place.folder,
    sampleFolder: null,
    preferences: preferencesInMemory(),
    now: () => '2027-03-14T12:00:00.000Z',
    newId: () => 'id',
  });
  unwrap(await host.handle('sessions.open', { folder }, context));
  const ledger = unwrap(await host.handle('ledger.get', {}, context));
  await host.close();
  return ledger;
}

/** The sample cut to its first two entries: five logs tell of the cache what thirteen do. */
function shortCopy(): string {
  const folder = sampleCopy(place.folder);
  const path = join(folder, 'session.json');
  const session = JSON.parse(readFileSync(path, 'utf8'));
  const [kept, cut] = [session.ledger.slice(0, 2), session.ledger.slice(2)];
  writeFileSync(path, JSON.stringify({ ...session, ledger: kept }));
  for (const { runId } of cut.flatMap((e: { runs: { runId: string }[] }) => e.runs)) {
    rmSync(join(folder, 'runs', runId), { recursive: true, force: true });
  }
  return folder;
}

describe('the cache of channels', () => {
  it('belongs to the sources of the reader that made it, in all their folders', () => {
    expect(readerFingerprint('9.9.9')).toMatch(/^[0-9a-f]{64}$/);
  });

  it('gives back the log it was made from, gaps and flags too', () => {
    const log = unwrap(readLog(readFileSync(loose), { file: 'x.csv' }));
    const cache = cacheOfLog(log, 'key');
    const back = logOfCache({ ...cache, header: JSON.parse(JSON.stringify(cache.header)) });
    expect(back).toEqual(log);
  });

  it('is refused where its arrays do not fit its head', () => {
    const cache = cacheOfLog(unwrap(readLog(readFileSync(loose), { file: 'x.csv' })), 'key');
    expect(logOfCache({ ...cache, arrays: cache.arrays.slice(0, -1) })).toBeNull();
    expect(logOfCache({ ...cache, header: { file: 'x' } })).toBeNull();
  });

  it('serves the second opening with the same answer, and damage to it costs nothing', async () => {
    const folder = shortCopy();
    const first = await ledgerOf(folder);
    const session = JSON.parse(readFileSync(join(folder, 'session.json'), 'utf8'));
    const id: string = session.ledger[0].runs[0].runId;
    const cache = join(folder, 'runs', id, 'channels.bin');
    const bytes = readFileSync(cache);
    expect(await ledgerOf(folder)).toEqual(first);
    bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] as number) ^ 0x10;
    writeFileSync(cache, bytes);
    expect(await ledgerOf(folder)).toEqual(first);
  });
});
