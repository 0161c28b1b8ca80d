import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { unwrap } from '../../core/result/index.ts';
import { createSession, type Session } from '../../core/session/index.ts';
import { createSessionFolder, type OpenSession, openSession } from '../../electron/store/index.ts';

/** Moments of an invented afternoon, a minute apart. */
export function moment(minute: number): string {
  return new Date(Date.UTC(2027, 2, 14, 10, minute)).toISOString();
}

export function sampleSession(name = 'Fenmoor hatch'): Session {
  return createSession({
    id: 'fenmoor',
    baselineId: 'baseline',
    name,
    now: moment(0),
    car: { mass_kg: 1320 },
  });
}

/** A short log whose content differs by `n`. */
export function sampleLog(n: number): Uint8Array {
  const rows = Array.from({ length: 40 }, (_, i) => `${i / 20},${2000 + i * 100 + n}`);
  return new TextEncoder().encode(`Time (s),Engine speed (rpm)\n${rows.join('\n')}\n`);
}

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
