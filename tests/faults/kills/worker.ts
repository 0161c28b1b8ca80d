// A program that imports and saves until it is killed. Each line it prints is an acknowledgement that was given:
// what stands there must be found again.
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { unwrap } from '../../../core/result/index.ts';
import { importLog, openSession, saveRun, saveSession } from '../../../electron/store/index.ts';
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
  | { readonly told: 'saved session'; readonly note: string }
  | { readonly told: 'saved run'; readonly id: string; readonly note: string };

function tell(line: Told): void {
  writeSync(1, `${JSON.stringify(line)}\n`);
}

async function work({ folder, seed, now, point }: Order): Promise<void> {
  const chance = chanceFrom(seed);
  const fs = killingFileSystem(point);
  tell({ told: 'begins' });
  const open = unwrap(await openSession(folder, { now, fs }));
  if (open.readOnly) throw new Error(`not writable: ${open.readOnly.code}`);
  tell({ told: 'opened' });
  for (let n = 0; ; n++) {
    const note = `${seed}-${n}`;
    const ids = [...open.runs.keys()];
    const [first, ...rest] = ids;
    const kind = chance.pick(['import', 'session', 'run']);
    if (kind === 'import' && ids.length < 12) {
      const text = `Time (s),Engine speed (rpm)\n${`${note},2500\n`.repeat(chance.int(1, 8_000))}`;
      const content = new TextEncoder().encode(text);
      const { record } = unwrap(await importLog(open, { name: `${note}.csv`, content }, {}, now));
      tell({ told: 'imported', id: record.id, sha256: record.sha256 });
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
for await (const line of createInterface({ input: process.stdin })) await work(JSON.parse(line));
