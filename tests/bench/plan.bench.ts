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

function median(values: number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
function time(run: (i: number) => unknown, rounds: number): { median: number; worst: number } {
  for (let i = 0; i < 20; i++) run(i);
  const taken: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    run(i);
    taken.push(performance.now() - start);
  }
  return { median: median(taken), worst: Math.max(...taken) };
}

const reference = time((i) => {
  for (let k = 0; k < 1000; k++) psychrolib.GetTWetBulbFromRelHum(20 + (k % 20), 0.3 + i / 1000, 101325);
}, 20).median;
console.log(`1,000 wet-bulb solves of psychrolib: ${reference.toFixed(2)} ms`);
for (const [name, setupOf] of Object.entries(cases)) {
  const setups = Array.from({ length: 200 }, (_, i) => setupOf(i));
  const taken = time((i) => unwrap(planOf(setups[i] ?? setupOf(i))), 200);
  console.log(
    `${name}: median ${taken.median.toFixed(2)} ms (${(taken.median / reference).toFixed(2)} of psychrolib), worst ${taken.worst.toFixed(2)} ms, frame ${frame_ms} ms: ${taken.median < frame_ms ? 'within' : 'OVER'}`,
  );
  if (taken.median >= frame_ms) process.exitCode = 1;
}
