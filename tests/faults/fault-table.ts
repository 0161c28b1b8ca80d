// Prints the table of faults tried and acknowledged data lost, as it stands in the README.
//   npm run fault-table [-- --faults 800 --kills 200 --seed 1]
import { parseArgs } from 'node:util';
import { faultKinds, liveThrough, type Tally } from './disk/campaign.ts';
import { damageAtRest } from './disk/damage.ts';
import { acts, cutAct } from './disk/one-act.ts';
import { threePrograms } from './disk/three-programs.ts';
import { killAgainAndAgain } from './kills/campaign.ts';

const { values } = parseArgs({
  options: {
    /** Of each kind. */
    faults: { type: 'string', default: '600' },
    kills: { type: 'string', default: '200' },
    seed: { type: 'string', default: '20270314' },
  },
});
const [faults, kills, seed] = [Number(values.faults), Number(values.kills), Number(values.seed)];

const words: Record<(typeof faultKinds)[number], string> = {
  'power cut': 'Power cut at any disk operation; unflushed data torn, zeroed or reordered',
  killed: 'Program gone at any disk operation',
  'disk full': 'Disk full, from any operation on',
  'flush fails': 'A flush or another operation fails once',
  'flush fails, then power cut': 'The same, and the power cut after it',
  'write-protected': 'Folder turns write-protected',
  'folder vanishes': 'Folder or share vanishes and comes back',
  'open files run out': 'No more open files',
};

const rows: { what: string; tally: Tally }[] = [];
async function tried(what: string, run: Promise<Tally>): Promise<void> {
  const tally = await run;
  rows.push({ what, tally });
  for (const loss of tally.lost) console.error(`LOST: ${loss}`);
}

const killed = await killAgainAndAgain(kills, seed);
await tried(
  'Real process killed (SIGKILL) while importing, watching, saving, migrating, packing',
  Promise.resolve({
    faults: killed.kills,
    acknowledged: killed.acknowledged,
    lost: [...killed.lost, ...killed.notOpened],
  }),
);
for (const kind of faultKinds) await tried(words[kind], liveThrough(kind, faults, seed));
for (const act of acts) await tried(`Power cut or kill while ${act.name}`, cutAct(act, faults, seed));
await tried(
  'Damage at rest (flipped bits, cut off, zeroed, junk, gone) in any file',
  damageAtRest(faults, seed),
);
await tried('Three programs on one session, closing and dying in any order', threePrograms(faults, seed));

const sum = (of: (tally: Tally) => number) => rows.reduce((all, { tally }) => all + of(tally), 0);
const shown = (n: number) => n.toLocaleString('en-GB');
console.log('| fault | tried | acknowledged data looked for again | lost |');
console.log('| --- | ---: | ---: | ---: |');
for (const { what, tally } of rows) {
  console.log(
    `| ${what} | ${shown(tally.faults)} | ${shown(tally.acknowledged)} | ${shown(tally.lost.length)} |`,
  );
}
console.log(
  `| **all** | **${shown(sum((t) => t.faults))}** | **${shown(sum((t) => t.acknowledged))}** | **${shown(sum((t) => t.lost.length))}** |`,
);
process.exit(sum((t) => t.lost.length) === 0 ? 0 : 1);
