import { describe, expect, it } from 'vitest';
import { faultKinds, liveThrough } from './disk/campaign.ts';

describe('a session on a failing disk', () => {
  it.each(faultKinds)('%s: nothing acknowledged is lost and the session opens', async (kind) => {
    const tally = await liveThrough(kind, 120, 20270314);
    expect(tally.lost).toEqual([]);
    expect(tally.faults).toBe(120);
    expect(tally.acknowledged).toBeGreaterThan(300);
  });

  it('on a disk that only pretends to flush, this test finds losses', async () => {
    const tally = await liveThrough('power cut', 20, 1, { ignoresFlush: true });
    expect(tally.lost.length).toBeGreaterThan(0);
  });
});
