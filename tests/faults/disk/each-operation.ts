import { unwrap } from '../../../core/result/index.ts';
import {
  closeSession,
  createSessionFolder,
  importLog,
  openSession,
  saveRun,
  saveSession,
} from '../../../electron/store/index.ts';
import type { Chance } from '../../support/chance.ts';
import { moment, sampleLog, sampleSession } from '../../support/store-samples.ts';
import { SimulatedDisk } from './simulated-disk.ts';

/** The worst luck: of all that was not flushed, nothing is left. */
const worst: Chance = { share: () => 0.99, int: (from) => from, pick: (list) => list[0] };

/**
 * For each single disk operation of a visit (open, import, save, close) that may fail once: what the next program
 * is told when it does the same again must survive the power cut after it.
 *
 * @returns  number of operations tried, and what was lost
 */
export async function failEachOperation(): Promise<{ operations: number; lost: string[] }> {
  const lost: string[] = [];
  for (let operation = 1; ; operation++) {
    const disk = new SimulatedDisk(worst);
    disk.plant('/shop/readme.txt', new Uint8Array());
    const folder = unwrap(await createSessionFolder('/shop', sampleSession(), moment(0), disk.fs));
    disk.fault = { operation, what: 'EIO', after: false, lasting: 0 };
    await visit(disk, folder);
    const isOver = !disk.hasStruck;
    disk.fault = null;
    const runId = await visit(disk, folder);
    if (runId === null) lost.push(`operation ${operation}: the second visit fails`);
    disk.loseUnflushed();
    disk.now_ms += 60_000;
    const opened = await openSession(folder, { now: moment(9), fs: disk.fs });
    if (!opened.ok) lost.push(`operation ${operation}: does not open`);
    else {
      const { session, runs } = opened.value;
      const note = runs.get(runId ?? '')?.record.note;
      if (session.note !== 'evening' || note !== 'dry') lost.push(`operation ${operation}: ${note}`);
      await closeSession(opened.value);
    }
    if (isOver) return { operations: operation - 1, lost };
  }
}

/** The id of the run, where all was acknowledged. */
async function visit(disk: SimulatedDisk, folder: string): Promise<string | null> {
  const opened = await openSession(folder, { now: moment(1), fs: disk.fs });
  if (!opened.ok) return null;
  const open = opened.value;
  const imported = await importLog(open, { name: 'a.csv', content: sampleLog(1) }, {}, moment(2));
  const saved = await saveSession(open, { ...open.session, note: 'evening' }, moment(3));
  const record = imported.ok ? (open.runs.get(imported.value.record.id)?.record ?? null) : null;
  const noted = record ? await saveRun(open, { ...record, note: 'dry' }, moment(4)) : null;
  await closeSession(open);
  return saved.ok && noted?.ok && record ? record.id : null;
}
