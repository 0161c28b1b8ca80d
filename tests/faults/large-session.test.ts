import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makeLargeSession, measureOpening } from '../bench/large-session.ts';

it('500 runs with 5,000 edited pulls open in three plain reads of the same JSON files', async () => {
  const parent = await mkdtemp(join(tmpdir(), 'large-'));
  try {
    const folder = await makeLargeSession(parent, 500, 10);
    // The best of some tries: what else the machine does only ever makes it slower.
    let best = Number.POSITIVE_INFINITY;
    for (let tried = 0; tried < 8 && best > 3; tried++) {
      const { runs, open, ratio } = await measureOpening(folder, 8);
      expect(runs).toBe(500);
      expect(open.wall_ms).toBeLessThan(1000);
      best = Math.min(best, ratio);
    }
    expect(best).toBeLessThanOrEqual(3);
  } finally {
    await rm(parent, { recursive: true, force: true });
  }
}, 120_000);
