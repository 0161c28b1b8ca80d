import { createRequire } from 'node:module';
import { planLadder } from '../../core/ladder/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { driven, sampleLadder, sampleSetup } from '../support/ladder.ts';

/**
 * Time of one ladder against what a screen may stand still, and as a ratio to a published solver: psychrolib's
 * wet-bulb temperature, itself a search by halving, 1,000 times. Run: node tests/bench/ladder.bench.ts
 */
const stands_ms = 50;
type Psychrolib = {
  SetUnitSystem(system: number): void;
  SI: number;
  GetTWetBulbFromRelHum(t: number, rh: number, p: number): number;
};
const psychrolib: Psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);

/** Processor time: on a shared machine the clock measures the others too. */
function time(run: (i: number) => unknown, rounds: number): { first: number; median: number } {
  const taken: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const start = process.cpuUsage();
    run(i);
    const { user, system } = process.cpuUsage(start);
    taken.push((user + system) / 1e3);
  }
  const first = taken[0] ?? Number.NaN;
  return { first, median: taken.sort((a, b) => a - b)[Math.floor(rounds / 2)] ?? Number.NaN };
}

const reference = time((i) => {
  for (let k = 0; k < 1000; k++) psychrolib.GetTWetBulbFromRelHum(20 + (k % 20), 0.3 + i / 1000, 101325);
}, 20).median;
console.log(`1,000 wet-bulb solves of psychrolib: ${reference.toFixed(2)} ms`);
/** Every ladder of another setup, so nothing could be remembered. */
const cases = {
  'whole ladder': [],
  'after three entries': [driven.baseline, driven.spray, driven.boost],
};
for (const [name, ledger] of Object.entries(cases)) {
  const inputs = Array.from({ length: 40 }, (_, i) =>
    sampleLadder({ ledger, setup: sampleSetup({ engine: { peakBoost_kPa: 105 + i / 4 } }) }),
  );
  const taken = time((i) => unwrap(planLadder(inputs[i] ?? sampleLadder({ ledger }))), 40);
  console.log(
    `${name}: first ${taken.first.toFixed(0)} ms, median ${taken.median.toFixed(1)} ms (${(taken.median / reference).toFixed(2)} of psychrolib), may stand ${stands_ms} ms: ${taken.median < stands_ms ? 'within' : 'OVER'}`,
  );
  if (taken.median >= stands_ms) process.exitCode = 1;
}
