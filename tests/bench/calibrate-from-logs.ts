import { declareChange, judge } from '../../core/compare/index.ts';
import { CarFileSchema, unknownConditions } from '../../core/power/index.ts';
import { analyseRun, evidenceOfRun } from '../../core/session/index.ts';
import {
  baselinePower,
  inventedCar,
  inventLog,
  loggerStyles,
  type PullTruth,
} from '../support/invented-logs.ts';
import { normal, seeded } from '../support/random.ts';

/**
 * The same calibration through the whole chain, from the text of a log to the verdict, for each style of logger:
 *
 *   node tests/bench/calibrate-from-logs.ts [sessions a row, default 50]
 *
 * Two logs a session, one a side. Pulls scatter by 0.4 %, follow 60 % of what boost wanders (0.8 kPa), lose
 * 0.15 % per K of intake temperature that rises by up to 0.4 K a pull, and drift unseen by 0.03 % a pull (one
 * deviation). Half of the sessions have no true change.
 */
const sessions = Number(process.argv[2] ?? 50);
const car = CarFileSchema.parse(inventedCar);
const encoder = new TextEncoder();

function evidence(text: string, file: string, firstOrder: number) {
  const input = {
    file,
    runId: file,
    record: { columns: [], pullEdits: [] },
    car,
    conditions: unknownConditions,
  };
  const run = analyseRun(encoder.encode(text), input);
  if (!run.ok) throw new Error(`${file}: ${run.problems.map((p) => p.code).join()}`);
  return evidenceOfRun(run.value, {
    entryId: file,
    firstOrder,
    car,
    conditions: unknownConditions,
    direction: null,
  });
}

const percent = (share: number, digits = 1) => (100 * share).toFixed(digits).padStart(6);
console.log(`${sessions} sessions a row, shares in percent`);
console.log('logger               pulls  found  coverage  false  sign  decided  refused  half   bias');
for (const style of loggerStyles) {
  for (const pulls of [2, 3, 5]) {
    const sum = { found: 0, covered: 0, judged: 0, wrong: 0, sign: 0, decided: 0, half: 0, bias: 0 };
    for (let i = 0; i < sessions; i++) {
      const uniform = seeded(i * 977 + pulls);
      for (let k = 0; k < 9; k++) uniform();
      const gauss = normal(uniform);
      const share = i % 2 ? -0.02 + 0.06 * uniform() : 0;
      const drift = 0.0003 * gauss();
      const soak = 0.4 * uniform();
      let order = 0;
      const pull = (effect: number, spark_deg: number): PullTruth => {
        const intake_C = 35 + soak * order + 0.5 * gauss();
        const boost_kPa = 100 + 0.8 * gauss();
        const luck =
          0.004 * gauss() + drift * order - 0.0015 * (intake_C - 35) + (0.6 * (boost_kPa - 100)) / 200;
        order++;
        return {
          share: (1 + effect) * Math.exp(luck) - 1,
          boost_kPa,
          spark_deg,
          lambda: 0.84 + 0.002 * gauss(),
          fluid_mL_min: 150 * (1 + 0.01 * gauss()),
          retard_deg: 0,
          intake_C,
          force_N: 0,
        };
      };
      const side = (effect: number, spark: number) =>
        Array.from({ length: pulls }, () => pull(effect, spark));
      const before = evidence(inventLog(side(0, 0), style, 2 * i + 1), 'before', 0);
      const after = evidence(inventLog(side(share, 1), style, 2 * i + 2), 'after', pulls);
      sum.found += before.length + after.length;
      const verdict = judge({ before, after, declared: declareChange('spark') });
      const band = verdict.band_rad_s;
      if (!band || !verdict.interval95 || verdict.effect === null) continue;
      sum.judged++;
      let base = 0;
      for (let k = 0; k <= 400; k++) {
        const weight = k === 0 || k === 400 ? 0.5 : 1;
        base += (weight * baselinePower(band[0] + ((band[1] - band[0]) * k) / 400)) / 400;
      }
      const truth = base * share;
      const [low, high] = verdict.interval95;
      if (low <= truth && truth <= high) sum.covered++;
      sum.half += (high - low) / 2 / base;
      sum.bias += (verdict.effect - truth) / base;
      const sign = verdict.kind === 'gain' ? 1 : verdict.kind === 'loss' ? -1 : 0;
      if (share === 0 && sign !== 0) sum.wrong++;
      if (share !== 0 && sign === -Math.sign(share)) sum.sign++;
      if (verdict.kind !== 'undecided') sum.decided++;
    }
    const n = sum.judged;
    console.log(
      `${style.name.padEnd(20)} ${String(pulls).padStart(5)} ${percent(sum.found / (2 * pulls * sessions))}   ${percent(sum.covered / n)} ${percent(sum.wrong / (sessions / 2))} ${percent(sum.sign / (sessions / 2))}  ${percent(sum.decided / n)}   ${percent(1 - n / sessions)} ${percent(sum.half / n, 2)} ${percent(sum.bias / n, 2)}`,
    );
  }
}
