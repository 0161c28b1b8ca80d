import { readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { main } from '../../../electron/cli/main.ts';
import { copyOfSample } from '../../support/sample-session.ts';

let folder: string;
beforeEach(() => {
  folder = copyOfSample();
});
afterEach(() => rmSync(dirname(folder), { recursive: true, force: true }));

async function call(...words: string[]): Promise<{ code: number; out: string }> {
  let out = '';
  const write = (text: unknown) => {
    out += String(text);
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(write),
    vi.spyOn(process.stderr, 'write').mockImplementation(write),
  ];
  try {
    return { code: await main(words), out };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

type Held = { runs: { runId: string }[] };
const held = (entry: number): string[] =>
  JSON.parse(readFileSync(join(folder, 'session.json'), 'utf8')).ledger.map((e: Held) =>
    e.runs.map((r) => r.runId),
  )[entry];

describe('onechange move', () => {
  it('brings a log into another entry, named by its run or its file', async () => {
    const runId = held(2)[0] ?? '';
    const { name } = JSON.parse(readFileSync(join(folder, 'runs', runId, 'run.json'), 'utf8'));
    const moved = await call('move', folder, runId, '--entry', '1');
    expect([moved.code, moved.out.includes(name)], moved.out).toEqual([0, true]);
    expect([held(1).includes(runId), held(2).includes(runId)]).toEqual([true, false]);
    expect((await call('move', folder, name, '--entry', '2', '--json')).code).toBe(0);
    expect([held(1).includes(runId), held(2).includes(runId)]).toEqual([false, true]);
  }, 60_000);

  it('names what is no log and no entry of the session, and changes nothing', async () => {
    const before = readFileSync(join(folder, 'session.json'), 'utf8');
    const runId = held(2)[0] ?? '';
    for (const words of [
      ['none.csv', '--entry', '1'],
      [runId, '--entry', '99'],
    ]) {
      const { code, out } = await call('move', folder, ...words, '--json');
      expect([code, JSON.parse(out).error.code]).toEqual([2, 'terminal/not-a-choice']);
    }
    expect((await call('move', folder, runId)).out).toContain('Usage: onechange move');
    expect(readFileSync(join(folder, 'session.json'), 'utf8')).toBe(before);
  }, 60_000);
});
