import { spawnSync } from 'node:child_process';
import { gridMean, gridOver, powerOnGrid } from '../../core/compare/band/grid.ts';
import { declareChange, judge, type PullEvidence } from '../../core/compare/index.ts';
import { interval, welch } from '../../core/compare/statistics/index.ts';
import { inventDay, quietDay } from '../support/invented-session.ts';

/**
 * Time of one verdict with whole-curve band and witnesses, two entries of ten pulls, as a ratio to SciPy's Welch t
 * on the same band means (tests/bench/welch.py). Wanted: under 100 ms. Run: node tests/bench/judge-speed.bench.ts
 */
const repeats = 40;
const spark = Math.PI / 180;
const sessions = Array.from({ length: repeats }, (_, i) =>
  inventDay({
    ...quietDay,
    seed: 100 + i,
    entries: [
      { pulls: 10, share: 0 },
      { pulls: 10, share: 0.01, moved: { spark } },
    ],
  }).map((e) => e.pulls),
);
const declared = declareChange('spark', { size: spark });

/** By the clock, and of the processor, which a machine busy with other work does not stretch. */
const times = sessions.map(([before = [], after = []]) => {
  const start = performance.now();
  const used = process.cpuUsage();
  judge({ before, after, declared });
  const { user, system } = process.cpuUsage(used);
  return { clock: performance.now() - start, processor: (user + system) / 1000 };
});
const [first = { clock: Number.NaN, processor: Number.NaN }] = times;
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[repeats >> 1] ?? Number.NaN;
const usual = median(times.map((t) => t.clock));
const processor = median(times.map((t) => t.processor));
console.log(
  `judge, 10 + 10 pulls, by the clock: first ${first.clock.toFixed(1)} ms, median ${usual.toFixed(1)} ms`,
);
console.log(`of the processor: first ${first.processor.toFixed(1)} ms, median ${processor.toFixed(1)} ms`);

const means = (pulls: readonly PullEvidence[] = []) =>
  pulls.map((p) => gridMean(powerOnGrid(p, gridOver([290, 640]))));
const pairs = sessions.map(([before, after]) => ({ before: means(before), after: means(after) }));
const script = new URL('welch.py', import.meta.url).pathname;
const python = spawnSync('python3', [script], { input: JSON.stringify({ pairs }), encoding: 'utf8' });
if (python.status !== 0) {
  console.log(`No ratio: SciPy is not to be had here (${python.stderr.trim().split('\n').at(-1) ?? ''}).`);
} else {
  const other = JSON.parse(python.stdout) as {
    scipy: string;
    pair_ms: number;
    answers: { effect: number; half: number }[];
  };
  const apart = pairs.map(({ before, after }, i) => {
    const [low, high] = interval(welch(before, after));
    return Math.abs((high - low) / 2 / (other.answers[i]?.half ?? Number.NaN) - 1);
  });
  console.log(`SciPy ${other.scipy}, Welch on band means: ${other.pair_ms.toFixed(2)} ms a pair`);
  console.log(`ratio of one verdict to one Welch t: ${(usual / other.pair_ms).toFixed(1)}`);
  console.log(`our Welch half widths differ from SciPy's by at most ${Math.max(...apart).toExponential(1)}`);
}
