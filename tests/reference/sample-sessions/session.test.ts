import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HostPort, RequestInput, RequestName, RequestOutput } from '../../../core/contract/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { fromSi } from '../../../core/units/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { bandMeanOf, sampleFolder, truth } from '../../support/sample-truth.ts';

describe('the bundled session as the program opens it', () => {
  let parent: string;
  let host: HostPort;
  let folder: string;

  async function ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>> {
    const context = { requestId: 'test', signal: { aborted: false }, progress: () => undefined };
    return unwrap(await host.handle(name, input, context)) as RequestOutput<N>;
  }

  beforeAll(async () => {
    parent = await mkdtemp(join(tmpdir(), 'sample-'));
    folder = join(parent, 'Fenmoor hatch');
    await cp(fileURLToPath(new URL('fenmoor-hatch', sampleFolder)), folder, { recursive: true });
    host = createHost({
      version: '0',
      shell: 'terminal',
      sessionsFolder: parent,
      sampleFolder: folder,
      preferences: preferencesInMemory(),
      now: () => '2027-03-15T08:00:00.000Z',
      newId: () => 'made-here',
    });
    await ask('sessions.open', { folder });
  });
  afterAll(async () => {
    await host.close();
    await rm(parent, { recursive: true, force: true });
  });

  it('tells the story in its ledger: verdicts, pulls, true worth inside the interval', async () => {
    const { lines } = await ask('ledger.get', {});
    expect(lines.map((l) => l.pulls)).toEqual([4, 4, 3, 3, 3, 3]);
    expect(lines.map((l) => l.againstId)).toEqual(truth.entries.map((e) => e.against ?? null));
    for (const entry of truth.entries.slice(1)) {
      const verdict = lines.find((l) => l.entryId === entry.id)?.verdict;
      expect(entry.expectedVerdicts, entry.id).toContain(verdict?.kind);
      if (entry.isConfounded) continue;
      const [low, high] = verdict?.interval95 ?? [Number.NaN, Number.NaN];
      const [from, to] = verdict?.band_rad_s ?? [Number.NaN, Number.NaN];
      const real = bandMeanOf(entry.declared?.delta_kW ?? [], fromSi(from, 'rpm'), fromSi(to, 'rpm'));
      expect(low / 1000, entry.id).toBeLessThanOrEqual(real);
      expect(high / 1000, entry.id).toBeGreaterThanOrEqual(real);
    }
  });

  it('names boost as what moved besides the spark of the last entry', async () => {
    const { lines } = await ask('ledger.get', {});
    const reasons = lines.at(-1)?.verdict?.reasons ?? [];
    expect(JSON.stringify(reasons)).toMatch(/manifoldPressure|boost/);
  });
});
