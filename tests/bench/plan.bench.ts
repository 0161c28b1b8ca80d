import { createRequire } from 'node:module';
import { planOf } from '../../core/injection/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { setupWith } from '../support/setup.ts';

/**
 * Time of one plan against a frame of 16 ms, and as a ratio to a published solver: psychrolib's wet-bulb
 * temperature, itself a search by halving, 1,000 times. Run: node tests/bench/plan.bench.ts
 */
const frame_ms = 16;
type Psychrolib = {
  SetUnitSystem(system: number): void;
  SI: number;
  GetTWetBulbFromRelHum(t: number, rh: number, p: number): number;
};
const psychrolib: Psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);

const sizes = [60, 100, 140, 175, 225, 250, 300, 375, 450, 500, 625, 1000];
/** A slider that moves: every plan is of another setup, so nothing could be remembered. */
const cases = {
  'four nozzles, valve duty': (i: number) => setupWith({ engine: { peakBoost_kPa: 90 + i / 10 } }),
  'twelve nozzles, pump speed by injector duty, knock limit, bucket test': (i: number) =>
    setupWith({
      engine: { peakBoost_kPa: 120 + i / 10, knockLimitedBoost_kPa: 60 },
      fluidSystem: {
        nozzles: sizes.map((flow_mL_min) => ({ name: String(flow_mL_min), flow_mL_min })),
        metering: 'pump-speed',
        input: 'injector-duty',
        fitted: ['300'],
        pump: { control: 'none' },
        line: { length_m: 4, bore_mm: 3, empty_m: 0.5 },
        bucket: {
          points: [
            { setting_percent: 100, time_s: 60, volume_mL: 370 },
            { setting_percent: 70, time_s: 60, volume_mL: 270 },
            { setting_percent: 50, time_s: 60, volume_mL: 200 },
          ],
        },
      },
    }),
};

/** The mean and not the median: the clock of a thread ticks coarser than a small plan takes. */
type Taken = { readonly mean: number; readonly p99: number };

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** Time that this thread itself has worked: what a busy machine takes away is not the plan's. */
function cpu_ms(): number {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1e3;
}

/** Once through everything first: a slider that moves has been moving for a while, and its code is compiled. */
function time(run: (i: number) => unknown, rounds: number): Taken {
  for (let i = 0; i < rounds; i++) run(i);
  const taken: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const start = cpu_ms();
    run(i);
    taken.push(cpu_ms() - start);
  }
  const mean = taken.reduce((a, b) => a + b, 0) / rounds;
  return { mean, p99: quantile(taken, 0.99) };
}

const solve = (i: number) => {
  for (let k = 0; k < 1000; k++) psychrolib.GetTWetBulbFromRelHum(20 + (k % 20), 0.3 + i / 1000, 101325);
};
const reference = time(solve, 30);
console.log(
  `1,000 wet-bulb solves of psychrolib: mean ${reference.mean.toFixed(2)} ms, 99th percentile ${reference.p99.toFixed(2)} ms`,
);
for (const [name, setupOf] of Object.entries(cases)) {
  const setups = Array.from({ length: 400 }, (_, i) => setupOf(i));
  const taken = time((i) => unwrap(planOf(setups[i] ?? setupOf(i))), 400);
  const ratio = taken.mean / reference.mean;
  const isWithin = taken.mean < frame_ms && taken.p99 < frame_ms;
  console.log(
    `${name}: mean ${taken.mean.toFixed(2)} ms (${ratio.toFixed(2)} of psychrolib), 99th percentile ${taken.p99.toFixed(2)} ms, frame ${frame_ms} ms: ${isWithin ? 'within' : 'OVER'}`,
  );
  if (!isWithin) process.exitCode = 1;
}
