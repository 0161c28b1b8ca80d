import { expect, it } from 'vitest';
import { findPulls, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { logDrive, plainText, randomTraits } from '../../support/log-generator/logger.ts';
import { createRandom } from '../../support/log-generator/random.ts';
import { dynoScenario, roadScenario } from '../../support/log-generator/scenario.ts';
import { scorePulls } from '../../support/log-generator/score.ts';

it('pulls of invented drives are found with both ends within 0.15 s', () => {
  let hits = 0;
  let missed = 0;
  let extra = 0;
  const misses: string[] = [];
  for (let seed = 1; seed <= 60; seed++) {
    const random = createRandom(seed);
    const scenario = random.chance(0.15) ? dynoScenario(random) : roadScenario(random);
    const table = logDrive(scenario.drive, randomTraits(random), random);
    const log = unwrap(readLog(new TextEncoder().encode(plainText(table)), { file: 'drive.csv' }));
    const found = findPulls(log).pulls.map((p) => ({ start: p.start_s, end: p.end_s }));
    const score = scorePulls(found, table.pulls);
    hits += score.hits;
    missed += score.missed;
    extra += score.extra;
    misses.push(...score.misses.map((m) => `${seed}: ${m}`));
  }
  expect(hits, misses.join('\n')).toBeGreaterThan(120);
  expect(hits / (hits + missed), misses.join('\n')).toBeGreaterThanOrEqual(0.99);
  expect(hits / (hits + extra), misses.join('\n')).toBeGreaterThanOrEqual(0.99);
});
