import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { main } from '../../../electron/cli/main.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

const sample = new URL('../../../sample-sessions/setup.json', import.meta.url).pathname;

let place: ReturnType<typeof temporaryFolder>;

beforeEach(() => {
  place = temporaryFolder();
});
afterEach(() => place.remove());

async function call(...words: string[]): Promise<{ code: number; json: Record<string, unknown> }> {
  let out = '';
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += text;
    return true;
  });
  try {
    return { code: await main([...words, '--json']), json: JSON.parse(out) };
  } finally {
    stdout.mockRestore();
  }
}

type Sheet = Record<string, Record<string, unknown>>;

/** The sample's setup with one thing changed, as a file. */
function changed(change: (setup: Sheet) => void): string {
  const setup = JSON.parse(readFileSync(sample, 'utf8'));
  change(setup);
  const path = join(place.folder, 'setup.json');
  writeFileSync(path, JSON.stringify(setup));
  return path;
}

describe('onechange plan', () => {
  it('answers in the fixed shape', async () => {
    const { code, json } = await call('plan', sample);
    expect(code).toBe(0);
    expect(json).toMatchObject({
      need: {
        fluid_mL_min: expect.any(Number),
        fluid_g_s: expect.any(Number),
        fuel_g_s: expect.any(Number),
        ratio: expect.any(Number),
      },
      nozzle: { choice: 'N140', delivered_mL_min: expect.any(Number), oversize: expect.any(Number) },
      recommended: expect.any(String),
      endurance: { perPull_mL: expect.any(Number) },
    });
    for (const list of ['strategies', 'guardBand', 'fit']) expect(json[list]).not.toHaveLength(0);
    const [first] = json.strategies as Record<string, unknown>[];
    expect(Object.keys(first ?? {})).toEqual(
      expect.arrayContaining(['name', 'start_kPa', 'full_kPa', 'curve', 'notes']),
    );
    expect((first?.curve as object[] | undefined)?.[0]).toEqual({
      boost_kPa: expect.any(Number),
      need_mL_min: expect.any(Number),
      delivered_mL_min: expect.any(Number),
      ratio: null,
    });
  });

  it('each fit rule comes with its question, reason and remedy', async () => {
    const { json } = await call('plan', sample);
    for (const rule of json.fit as Record<string, string>[]) {
      for (const part of ['question', 'reason', 'remedy']) expect(rule[part]?.length).toBeGreaterThan(10);
    }
  });

  it.each<[string, (setup: Sheet) => void]>([
    [
      'a share over 100 %',
      (s) =>
        Object.assign(s.fluidSystem as object, {
          mix: { by: 'poured', methanol_percent: 80, ethanol_percent: 40 },
        }),
    ],
    [
      'a negative flow',
      (s) =>
        Object.assign(s.fluidSystem as object, {
          nozzles: [{ name: 'N', flow_mL_min: -5, ratedPressure_kPa: 700, count: 1 }],
          fitted: [],
        }),
    ],
    [
      'a pump weaker than boost',
      (s) =>
        Object.assign(s.fluidSystem as object, { pump: { shutPressure_kPa: 60, openFlow_mL_min: 1000 } }),
    ],
    [
      'a start above the full point',
      (s) => Object.assign(s.targets as object, { start_kPa: 120, full_kPa: 100 }),
    ],
    ['an empty nozzle list', (s) => Object.assign(s.fluidSystem as object, { nozzles: [], fitted: [] })],
    ['no peak boost', (s) => Object.assign(s.engine as object, { peakBoost_kPa: null })],
  ])('%s gets a sentence that says what and how to mend it', async (_name, change) => {
    const { code, json } = await call('plan', changed(change));
    expect(code).toBe(2);
    const { message } = json.error as { message: string };
    expect(message.split('. ').length).toBeGreaterThanOrEqual(2);
  });
});

describe('onechange fluid', () => {
  it('half and half methanol poured at 20 C: 44.2 % by mass, 926.9 kg/m3 (reference list, pour-methanol-50)', async () => {
    const { code, json } = await call('fluid', '--methanol', '50');
    expect(code).toBe(0);
    expect(json.density_kg_m3).toBeCloseTo(926.9, 0);
  });

  it('a hydrometer reading gives the strength', async () => {
    const { json } = await call('fluid', '--density', '926.9', '--alcohol', 'methanol');
    expect(JSON.stringify(json)).toMatch(/44\.\d/);
  });

  it.each([
    [['--methanol', 'lots'], 'terminal/not-a-choice'],
    [['--by', 'feel'], 'terminal/not-a-choice'],
  ])('%j is refused', async (words, code) => {
    expect((await call('fluid', ...words)).json).toMatchObject({ error: { code } });
  });

  it('more than the whole is refused with a remedy', async () => {
    const { code, json } = await call('fluid', '--methanol', '80', '--ethanol', '40');
    expect(code).toBe(2);
    expect((json.error as { message: string }).message.length).toBeGreaterThan(30);
  });
});
