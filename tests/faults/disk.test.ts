import { describe, expect, it } from 'vitest';
import { faultKinds, liveThrough } from './disk/campaign.ts';
import { damageAtRest } from './disk/damage.ts';
import { failEachOperation } from './disk/each-operation.ts';
import { acts, cutAct } from './disk/one-act.ts';
import { threePrograms } from './disk/three-programs.ts';

const seed = 20270314;

describe('a session on a failing disk', () => {
  it.each(faultKinds)('%s: nothing acknowledged is lost and the session opens', async (kind) => {
    const tally = await liveThrough(kind, 120, seed);
    expect(tally.lost).toEqual([]);
    expect(tally.faults).toBe(120);
    expect(tally.acknowledged).toBeGreaterThan(300);
  });

  it('on a disk that only pretends to flush, this test finds losses', async () => {
    const tally = await liveThrough('power cut', 20, 1, { ignoresFlush: true });
    expect(tally.lost.length).toBeGreaterThan(0);
  });

  it('whatever single operation failed before, what the next program is told survives a power cut', async () => {
    const { operations, lost } = await failEachOperation();
    expect(lost).toEqual([]);
    expect(operations).toBeGreaterThan(60);
  });

  it.each(acts.map((act) => [act.name, act] as const))('%s is whole or not at all', async (_, act) => {
    const tally = await cutAct(act, 60, seed);
    expect(tally.lost).toEqual([]);
    expect(tally.faults).toBe(60);
  });

  it('a damaged file is named, set aside and repaired, and the rest stays as it was', async () => {
    const tally = await damageAtRest(200, seed);
    expect(tally.lost).toEqual([]);
    expect(tally.faults).toBe(200);
  });

  it('of three programs one writes, and each finds what the one before was told is saved', async () => {
    const tally = await threePrograms(100, seed);
    expect(tally.lost).toEqual([]);
    expect(tally.faults).toBe(100);
  });
});
