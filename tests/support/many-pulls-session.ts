import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RequestContext, Snapshot } from '../../core/contract/index.ts';
import { createHost, preferencesInMemory } from '../../electron/host/index.ts';
import { inventedCar, inventLog, loggerStyles, type PullTruth } from './invented-logs.ts';
import { normal, seeded } from './random.ts';

const style = loggerStyles[0];

/**
 * A session folder with two entries of twelve pulls (24 on the bench) and two of one (2 on the bench), made
 * through the host from invented logs: a boost step of 8 kPa worth 3 %, then spark of 1 degree and lambda of
 * -0.02 driven once each.
 *
 * @param id  of the session: two of one id are copies of each other
 */
export async function manyPullsSession(parent: string, id = 'many-pulls'): Promise<string> {
  if (!style) throw new Error('no logger style');
  const uniform = seeded(24);
  for (let i = 0; i < 9; i++) uniform();
  const gauss = normal(uniform);
  const pull = (set: Partial<PullTruth>): PullTruth => ({
    boost_kPa: 100 + 0.6 * gauss(),
    spark_deg: 0,
    lambda: 0.84 + 0.002 * gauss(),
    fluid_mL_min: 150 * (1 + 0.01 * gauss()),
    retard_deg: 0,
    intake_C: 35 + 0.5 * gauss(),
    force_N: 0,
    ...set,
    share: (1 + (set.share ?? 0)) * Math.exp(0.006 * gauss()) - 1,
  });
  const many = (n: number, set: Partial<PullTruth>) => Array.from({ length: n }, () => pull(set));
  const boosted = { boost_kPa: 108, share: 0.03 };
  const logs = [
    { entryId: null, pulls: many(12, {}) },
    { entryId: 'e-boost', pulls: many(12, boosted) },
    { entryId: 'e-spark', pulls: many(1, { ...boosted, share: 0.04, spark_deg: 1 }) },
    { entryId: 'e-mixture', pulls: many(1, { ...boosted, share: 0.04, spark_deg: 1, lambda: 0.82 }) },
  ];
  const ids = [id, 'e-baseline'];
  const scratch = mkdtempSync(join(tmpdir(), 'onechange-logs-'));
  const host = createHost({
    version: '0.0.0',
    shell: 'terminal',
    sessionsFolder: parent,
    sampleFolder: null,
    preferences: preferencesInMemory({}),
    now: () => '2027-03-14T10:00:00.000Z',
    newId: () => ids.shift() ?? 'more',
  });
  const context: RequestContext = { requestId: 'make', signal: { aborted: false }, progress: () => {} };
  const made = await host.handle(
    'sessions.create',
    { name: 'Many pulls (invented)', car: { ...inventedCar, name: 'Invented' } },
    context,
  );
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const { folder, session } = made.value as Snapshot;
  const entry = (id: string, kind: string, from: object, to: object) => ({
    type: 'entry.add',
    entry: { id, kind, change: { from, to }, createdAt: '2027-03-14T10:00:00.000Z' },
  });
  const edited = await host.handle(
    'session.edit',
    {
      edits: [
        entry('e-boost', 'boost', { value: 100, unit: 'kPa' }, { value: 108, unit: 'kPa' }),
        entry('e-spark', 'spark', { value: 0, unit: 'deg' }, { value: 1, unit: 'deg' }),
        entry('e-mixture', 'mixture', { value: 0.84, unit: 'lambda' }, { value: 0.82, unit: 'lambda' }),
      ],
    },
    context,
  );
  if (!edited.ok) throw new Error(JSON.stringify(edited.problems));
  const baseline = session.ledger[0]?.id ?? null;
  for (const [i, { entryId, pulls }] of logs.entries()) {
    const path = join(scratch, `${i}.csv`);
    writeFileSync(path, inventLog(pulls, style, 40 + i));
    const taken = await host.handle('runs.import', { path, entryId: entryId ?? baseline }, context);
    if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  }
  await host.close();
  rmSync(scratch, { recursive: true });
  return folder;
}
