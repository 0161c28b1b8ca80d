import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makeLargeSession, measureOpening } from '../bench/large-session.ts';

// How fast it opens is measured by `node tests/bench/large-session.ts`: a busy machine must not fail a test.
it('a session of 500 runs with 5,000 edited pulls opens whole', async () => {
  const parent = await mkdtemp(join(tmpdir(), 'large-'));
  try {
    const folder = await makeLargeSession(parent, 500, 10);
    const { runs } = await measureOpening(folder, 1);
    expect(runs).toBe(500);
  } finally {
    await rm(parent, { recursive: true, force: true });
  }
});
