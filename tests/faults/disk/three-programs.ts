import { unwrap } from '../../../core/result/index.ts';
import {
  checkSession,
  closeSession,
  createSessionFolder,
  importLog,
  type OpenSession,
  openSession,
  saveSession,
} from '../../../electron/store/index.ts';
import type { ProcessView } from '../../../electron/store/process-view.ts';
import { chanceFrom } from '../../support/chance.ts';
import { moment, sampleLog, sampleSession } from '../../support/store-samples.ts';
import type { Tally } from './campaign.ts';
import { SimulatedDisk } from './simulated-disk.ts';

/**
 * Three programs want one session: they open, write, close and are killed in any order. Never may two write; what
 * any of them was told is saved must be there for the next.
 */
export async function threePrograms(faults: number, seed: number): Promise<Tally> {
  const tally: Tally = { faults: 0, acknowledged: 0, lost: [] };
  const chance = chanceFrom(seed);
  const disk = new SimulatedDisk(chance);
  const { fs } = disk;
  disk.plant('/shop/readme.txt', new Uint8Array());
  const folder = unwrap(await createSessionFolder('/shop', sampleSession(), moment(0), fs));
  const living = new Set<number>();
  const programs: { pid: number; open: OpenSession | null }[] = [1, 2, 3].map((pid) => ({ pid, open: null }));
  const imported = new Set<string>();
  let pids = 10;
  let note = '';
  let n = 0;
  const viewOf = (pid: number): ProcessView => ({
    self: async () => ({ host: 'laptop', boot: 'b', pid, started: `${pid}` }),
    look: async (other) => (living.has(other) ? { started: `${other}` } : 'gone'),
  });
  const say = (what: string) => tally.lost.push(`turn ${n}: ${what}`);
  const [one = { pid: 0, open: null }, ...others] = programs;

  while (tally.faults < faults) {
    const program = chance.pick([one, ...others]);
    n++;
    const act = chance.pick(['open', 'save', 'import', 'close', 'killed']);
    const { open } = program;
    if (act === 'open' && !open) {
      program.pid = ++pids;
      living.add(program.pid);
      program.open = unwrap(await openSession(folder, { now: moment(n), fs, view: viewOf(program.pid) }));
      const writers = programs.filter((p) => p.open && !p.open.readOnly);
      if (writers.length > 1) say(`${writers.length} may write`);
      if (writers.length === 0) say('nobody may write though nobody else has it');
      if (program.open.session.note !== note) say(`the note is “${program.open.session.note}”`);
      for (const id of imported) if (!program.open.runs.has(id)) say(`run ${id} is not there`);
      tally.acknowledged += 1 + imported.size;
    } else if (act === 'save' && open) {
      const text = `note ${n}`;
      const saved = await saveSession(open, { ...open.session, note: text }, moment(n));
      if (saved.ok !== (open.readOnly === null)) say(`a save was answered ${saved.ok}`);
      if (saved.ok) note = text;
    } else if (act === 'import' && open && imported.size < 30) {
      const taken = await importLog(open, { name: 'x.csv', content: sampleLog(n) }, {}, moment(n));
      if (taken.ok !== (open.readOnly === null)) say(`an import was answered ${taken.ok}`);
      if (taken.ok) imported.add(taken.value.record.id);
    } else if ((act === 'close' || act === 'killed') && open) {
      // The dead do not remove their lock.
      if (act === 'killed' && !open.readOnly)
        disk.fault = { operation: 1, what: 'cut', after: false, lasting: 0 };
      await closeSession(open).catch(() => undefined);
      disk.fault = null;
      living.delete(program.pid);
      program.open = null;
      tally.faults++;
    }
  }
  if (!unwrap(await checkSession(folder, { fs })).isSound) say('the check finds damage');
  return tally;
}
