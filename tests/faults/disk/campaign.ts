import { type Chance, chanceFrom } from '../../support/chance.ts';
import { type DiskOptions, type Fault, PowerCut, SimulatedDisk } from './simulated-disk.ts';
import { Story } from './story.ts';

export type FaultKind =
  | 'power cut'
  | 'killed'
  | 'disk full'
  | 'flush fails'
  | 'flush fails, then power cut'
  | 'write-protected'
  | 'folder vanishes'
  | 'open files run out';

export const faultKinds: readonly FaultKind[] = [
  'power cut',
  'killed',
  'disk full',
  'flush fails',
  'flush fails, then power cut',
  'write-protected',
  'folder vanishes',
  'open files run out',
];

export type Tally = {
  faults: number;
  /** Acknowledged imports and edits that were looked for again. */
  acknowledged: number;
  readonly lost: string[];
};

/** Faults that one session lives through before the next is begun. */
const faultsPerLife = 12;
/** Operations of a few turns of work; faults fall anywhere among them. */
const spread = 150;

/** Faults of one operation only. */
const passing = new Set<FaultKind>(['open files run out', 'flush fails', 'flush fails, then power cut']);
const cuts = new Set<FaultKind>(['power cut', 'flush fails, then power cut']);

const codes: Partial<Record<FaultKind, [string, ...string[]]>> = {
  'disk full': ['ENOSPC', 'EDQUOT'],
  'flush fails': ['EIO'],
  'flush fails, then power cut': ['EIO'],
  'write-protected': ['EROFS', 'EACCES', 'EPERM'],
  'folder vanishes': ['ENOENT', 'ESTALE', 'EIO', 'ENOTCONN'],
  'open files run out': ['EMFILE'],
};

/** Lets sessions live through `faults` faults of one kind and looks after each whether anything was lost. */
export async function liveThrough(
  kind: FaultKind,
  faults: number,
  seed: number,
  options: DiskOptions = {},
): Promise<Tally> {
  const tally: Tally = { faults: 0, acknowledged: 0, lost: [] };
  for (let life = 0; tally.faults < faults; life++) {
    const chance = chanceFrom(seed + life);
    await oneLife(kind, faults, new SimulatedDisk(chance, options), chance, tally);
  }
  return tally;
}

async function oneLife(
  kind: FaultKind,
  faults: number,
  disk: SimulatedDisk,
  chance: Chance,
  tally: Tally,
): Promise<void> {
  const story = await Story.begin(disk, chance);
  for (let i = 0; i < faultsPerLife && tally.faults < faults; i++) {
    const fault: Fault = {
      operation: chance.int(1, spread),
      what: codes[kind] ? chance.pick(codes[kind]) : 'cut',
      after: chance.share() < 0.4,
      lasting: passing.has(kind) ? 0 : chance.int(0, 60),
    };
    disk.fault = fault;
    try {
      while (!disk.hasStruck) await story.work(1);
      await story.work(3);
    } catch (error) {
      if (!(error instanceof PowerCut)) throw error;
    }
    const isCut = cuts.has(kind);
    const isDead = isCut || kind === 'killed';
    if (isDead) await story.die();
    if (isCut) disk.loseUnflushed();
    if (kind === 'killed' && chance.share() < 0.5) disk.flushAll();
    disk.now_ms += 60_000;
    disk.fault = null;
    await story.lookAgain(isCut || !isDead);
    tally.faults++;
    if (story.lost.length > 0) {
      tally.lost.push(`${kind}, ${JSON.stringify(fault)}: ${story.lost.join('; ')}`);
      break;
    }
  }
  await story.die();
  tally.acknowledged += story.acknowledged;
}
