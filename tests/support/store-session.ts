import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { unwrap } from '../../core/result/index.ts';
import { createSessionFolder, type OpenSession, openSession } from '../../electron/store/index.ts';
import { moment, sampleSession } from './store-samples.ts';

export * from './store-samples.ts';

/** A folder of its own, removed after the test. */
export async function scratchFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'store-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

export async function newSessionFolder(name?: string): Promise<string> {
  return unwrap(await createSessionFolder(await scratchFolder(), sampleSession(name), moment(0)));
}

export async function opened(folder: string, minute = 1): Promise<OpenSession> {
  return unwrap(await openSession(folder, { now: moment(minute) }));
}
