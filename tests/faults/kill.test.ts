import { describe, expect, it } from 'vitest';
import { killAgainAndAgain } from './kills/campaign.ts';

describe('a program that is killed while it imports and saves', () => {
  it('loses nothing that it acknowledged in 200 kills, and its session opens each time', async () => {
    const count = await killAgainAndAgain(200, 20270314);
    expect(count.lost).toEqual([]);
    expect(count.notOpened).toEqual([]);
    expect(count.kills).toBe(200);
    // The test would prove nothing if the kills all fell before the work or all at one place.
    expect(count.acknowledged).toBeGreaterThan(1000);
    expect(count.atOperation).toBeGreaterThan(60);
    expect(count.atMoment).toBeGreaterThan(40);
    // Two minutes alone; a machine that does more at once takes its time.
  }, 900_000);
});
