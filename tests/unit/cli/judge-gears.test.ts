import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { main } from '../../../electron/cli/main.ts';
import {
  inventedCar,
  inventLog,
  type LoggerStyle,
  loggerStyles,
  type PullTruth,
} from '../../support/invented-logs.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

const style = loggerStyles[0] as LoggerStyle;

/** All pulls have the same engine: nothing was changed. */
const pull = (gear: number, place: number): PullTruth => ({
  share: 0.004 * Math.sin(5 * place + gear),
  boost_kPa: 100,
  spark_deg: 0,
  lambda: 0.84,
  fluid_mL_min: 150,
  retard_deg: 0,
  intake_C: 35,
  force_N: 0,
  gear,
});

let place: ReturnType<typeof temporaryFolder>;
let logs = 0;
beforeEach(() => {
  place = temporaryFolder();
});
afterEach(() => place.remove());

function file(content: string): string {
  const path = join(place.folder, `${logs++}.txt`);
  writeFileSync(path, content);
  return path;
}

async function judged(before: readonly number[], after: readonly number[]) {
  const { gearRatios: _, finalDrive: __, pullGear: ___, ...car } = inventedCar;
  const log = (gears: readonly number[], seed: number) => file(inventLog(gears.map(pull), style, seed));
  let out = '';
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += text;
    return true;
  });
  const words = ['--car', file(JSON.stringify(car)), '--before', log(before, 3), '--after', log(after, 5)];
  await main(['judge', ...words, '--changed', 'other', '--json']);
  stdout.mockRestore();
  return JSON.parse(out);
}

it('a car without gear ratios is not compared across gears', async () => {
  const verdict = await judged([3, 3, 3], [4, 4, 4]);
  expect(verdict).toMatchObject({ verdict: 'not-comparable' });
  expect(verdict.reasons[0]).toMatchObject({ code: 'compare/other-gear-by-speeds' });
});

it('a pull that was driven in another gear is left out and named', async () => {
  const verdict = await judged([3, 3, 3], [3, 4, 3, 3]);
  expect(verdict.remarks.map((r: { code: string }) => r.code)).toContain('compare/left-out-gear-by-speeds');
  expect(verdict).toMatchObject({ verdict: 'equivalent', pullsAfter: 3 });
});
