/**
 * The sample's story on many days: the same six entries, driven with other seeds. Prints how often each change got
 * which verdict, and how often the 95 % interval held the true worth.
 *
 *   node tests/bench/sample-story.ts [days] [first seed]
 */
import { fromSi } from '../../core/units/index.ts';
import { story } from '../../sample-sessions/simulation/story.ts';
import { storyPulls, storyVerdicts } from '../support/sample-story.ts';
import { bandMeanOf, truth } from '../support/sample-truth.ts';

const days = Number(process.argv[2] ?? 40);
const firstSeed = Number(process.argv[3] ?? 1);

type Tally = {
  kinds: Map<string, number>;
  held: number;
  stated: number;
  halves: number[];
  reasons: Map<string, number>;
};
const tallies: Tally[] = story.slice(1).map(() => ({
  kinds: new Map(),
  held: 0,
  stated: 0,
  halves: [],
  reasons: new Map(),
}));
const count = (map: Map<string, number>, key: string) => map.set(key, (map.get(key) ?? 0) + 1);

for (let day = 0; day < days; day++) {
  const verdicts = storyVerdicts(story, storyPulls(story, firstSeed + day));
  verdicts.forEach((verdict, i) => {
    const tally = tallies[i];
    const entry = truth.entries[i + 1];
    if (!tally || !entry) return;
    count(tally.kinds, verdict.kind);
    for (const reason of verdict.reasons) {
      const quantity = 'quantity' in reason.facts ? ` ${reason.facts.quantity}` : '';
      count(tally.reasons, `${reason.code}${quantity}`);
    }
    if (!verdict.interval95 || !verdict.band_rad_s || entry.isConfounded) return;
    const [low, high] = verdict.interval95;
    const [from, to] = verdict.band_rad_s;
    const real = bandMeanOf(entry.declared?.delta_kW ?? [], fromSi(from, 'rpm'), fromSi(to, 'rpm')) * 1000;
    tally.stated++;
    tally.halves.push((high - low) / 2000);
    if (low <= real && real <= high) tally.held++;
  });
}

const shown = (map: Map<string, number>) => [...map].map(([key, n]) => `${key} ${n}`).join(', ');
console.log(`${days} days, seeds ${firstSeed} to ${firstSeed + days - 1}`);
console.log('change       | true kW | verdicts | interval held truth | mean half width kW | reasons');
story.slice(1).forEach((chapter, i) => {
  const { kinds, held, stated, halves, reasons } = tallies[i] as Tally;
  const half = halves.length ? (halves.reduce((a, b) => a + b, 0) / halves.length).toFixed(2) : '-';
  const real = truth.entries[i + 1]?.declared?.effect_kW.toFixed(2);
  console.log(
    `${chapter.id.padEnd(12)} | ${real} | ${shown(kinds)} | ${stated ? `${held} of ${stated}` : '-'} | ${half} | ${shown(reasons)}`,
  );
});
