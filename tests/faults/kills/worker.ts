// A program that imports, watches, saves and packs until it is killed. Each line it prints is an acknowledgement that was given:
// what stands there must be found again.
import { writeSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { unwrap } from '../../../core/result/index.ts';
import {
  importLog,
  type OpenSession,
  openSession,
  saveRun,
  saveSession,
  watchFolder,
  zipSession,
} from '../../../electron/store/index.ts';
import { chanceFrom } from '../../support/chance.ts';
import { type KillPoint, killingFileSystem } from './killing-file-system.ts';

export type Order = {
  readonly folder: string;
  readonly seed: number;
  readonly now: string;
  readonly point: KillPoint | null;
};

export type Told =
  | { readonly told: 'begins' }
  | { readonly told: 'opened' }
  | { readonly told: 'starts'; readonly note: string }
  | { readonly told: 'imported'; readonly id: string; readonly sha256: string }
  | { readonly told: 'zipped' }
  | { readonly told: 'saved session'; readonly note: string }
  | { readonly told: 'saved run'; readonly id: string; readonly note: string };

function tell(line: Told): void {
  writeSync(1, `${JSON.stringify(line)}\n`);
}

/** Where the invented logger writes, and where the session is packed to, beside the session. */
export const inboxOf = (folder: string) => `${folder} inbox`;
export const zipOf = (folder: string) => `${folder}.zip`;

const eager = { interval_ms: 3, settle_ms: 6 };

async function take(open: OpenSession, path: string, now: string): Promise<void> {
  const { record } = unwrap(await importLog(open, { path }, {}, now));
  tell({ told: 'imported', id: record.id, sha256: record.sha256 });
}

async function work({ folder, seed, now, point }: Order): Promise<void> {
  const chance = chanceFrom(seed);
  const fs = killingFileSystem(point);
  tell({ told: 'begins' });
  const open = unwrap(await openSession(folder, { now, fs }));
  if (open.readOnly) throw new Error(`not writable: ${open.readOnly.code}`);
  tell({ told: 'opened' });
  unwrap(await watchFolder(inboxOf(folder), (log) => void take(open, log.path, now), eager));
  for (let n = 0; ; n++) {
    const note = `${seed}-${n}`;
    const ids = [...open.runs.keys()];
    const [first, ...rest] = ids;
    const kind = chance.pick(['import', 'session', 'run', 'import', 'session', 'run', 'watch', 'zip']);
    if (kind === 'import' && ids.length < 12) {
      const text = `Time (s),Engine speed (rpm)\n${`${note},2500\n`.repeat(chance.int(1, 8_000))}`;
      const content = new TextEncoder().encode(text);
      const { record } = unwrap(await importLog(open, { name: `${note}.csv`, content }, {}, now));
      tell({ told: 'imported', id: record.id, sha256: record.sha256 });
    } else if (kind === 'watch' && ids.length < 12) {
      await writeFile(join(inboxOf(folder), `${note}.csv`), `Time (s),Engine speed (rpm)\n${note},2500\n`);
    } else if (kind === 'zip') {
      unwrap(await zipSession(folder, zipOf(folder), { now, fs }));
      tell({ told: 'zipped' });
    } else if (kind === 'run' && first !== undefined) {
      const run = open.runs.get(chance.pick([first, ...rest]));
      if (!run) continue;
      tell({ told: 'starts', note });
      unwrap(await saveRun(open, { ...run.record, note }, now));
      tell({ told: 'saved run', id: run.record.id, note });
    } else {
      tell({ told: 'starts', note });
      unwrap(await saveSession(open, { ...open.session, note }, now));
      tell({ told: 'saved session', note });
    }
  }
}

// It is started ahead of its turn, because loading takes longer than working.
if (import.meta.main) {
  for await (const line of createInterface({ input: process.stdin })) await work(JSON.parse(line));
}
