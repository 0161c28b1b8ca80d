import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type {
  HostPort,
  RequestContext,
  RequestInput,
  RequestName,
  RequestOutput,
} from '../../../core/contract/index.ts';
import { readLog } from '../../../core/log/index.ts';
import { findRolls, fitCoastDown, rollsIn } from '../../../core/power/index.ts';
import { type Result, unwrap } from '../../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { rolledLog, rolledTruth } from '../../support/rolled-log.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

const context: RequestContext = { requestId: 't', signal: { aborted: false }, progress: () => undefined };
let place: ReturnType<typeof temporaryFolder>;
let host: HostPort;
let nextId = 0;

function ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<Result<RequestOutput<N>>> {
  return host.handle(name, input, context) as Promise<Result<RequestOutput<N>>>;
}

async function imported(name: string, text: string): Promise<string> {
  const path = join(place.folder, name);
  writeFileSync(path, text);
  return unwrap(await ask('runs.import', { path })).run.record.id;
}

beforeEach(async () => {
  place = temporaryFolder();
  const sessionsFolder = join(place.folder, 'sessions');
  mkdirSync(sessionsFolder);
  host = createHost({
    version: '0.0.0',
    shell: 'web',
    sessionsFolder,
    sampleFolder: null,
    preferences: preferencesInMemory(),
    now: () => '2027-03-14T12:00:00.000Z',
    newId: () => `id-${nextId++}`,
  });
  const car = { mass_kg: rolledTruth.mass, wheelInertia_kg_m2: 0 };
  unwrap(await ask('sessions.create', { name: 'Rolls', car }));
});

afterEach(async () => {
  await host.close();
  place.remove();
});

describe('a coast-down of a session', () => {
  it('is offered for the runs that hold rolls, and for no other', async () => {
    expect(unwrap(await ask('coastDown.runs', {}))).toEqual({ runs: [] });
    await imported('level.csv', 'Time (s),Speed (km/h)\n0,50\n1,50\n2,50\n3,50\n4,50\n5,50');
    const runId = await imported('rolls.csv', rolledLog());
    expect(unwrap(await ask('coastDown.runs', {}))).toEqual({ runs: [{ runId, rolls: 2 }] });
  });

  it('gives what the fit gives, with the slope taken off once the ways are said', async () => {
    const runId = await imported('rolls.csv', rolledLog());
    const blind = unwrap(await ask('coastDown.fit', { runs: [{ runId }] }));
    expect(blind.rolls.map((r) => r.way)).toEqual(['out', 'out']);
    // Two slopes that are taken for one contradict each other.
    expect(blind).toMatchObject({ fit: null, problems: [{ code: 'power/coast-down-no-fit' }] });
    const { rolls, fit } = unwrap(await ask('coastDown.fit', { runs: [{ runId, ways: ['out', 'back'] }] }));
    expect(rolls.map((r) => r.way)).toEqual(['out', 'back']);
    expect(rolls[0]?.fromSpeed).toBeGreaterThan(35);
    expect(rolls[0]?.toSpeed).toBeLessThan(5);
    expect(fit?.notes.map((n) => n.code)).toEqual(['power/coast-down-both-ways', 'power/coast-down-beyond']);
    const log = unwrap(readLog(new TextEncoder().encode(rolledLog()), { file: 'rolls.csv' }));
    const windows = findRolls(log).map((w, n) => ({ ...w, way: n === 0 ? 1 : -1 }) as const);
    const { car } = unwrap(await ask('session.get', {}))?.session ?? {};
    if (!car) throw new Error('the session has a car');
    const same = unwrap(fitCoastDown(rollsIn(log, windows), car));
    expect(fit?.roadLoad.a_N).toBeCloseTo(same.a, 2);
    expect(fit?.roadLoad.c_N_s2_m2).toBeCloseTo(same.c, 5);
    expect(fit?.half.a).toBe(same.half.a);
    expect(Math.abs((fit?.roadLoad.a_N ?? 0) - rolledTruth.a)).toBeLessThan(4);
  });

  it('takes the ways from what the run says of its direction', async () => {
    const runId = await imported('rolls.csv', rolledLog());
    unwrap(
      await ask('session.edit', { edits: [{ type: 'run.set', runId, patch: { direction: 'back-first' } }] }),
    );
    const { rolls } = unwrap(await ask('coastDown.fit', { runs: [{ runId }] }));
    expect(rolls.map((r) => r.way)).toEqual(['back', 'out']);
  });

  it('leaves out a roll that is said not to count, and fits nothing where none counts', async () => {
    const runId = await imported('rolls.csv', rolledLog());
    const one = unwrap(await ask('coastDown.fit', { runs: [{ runId, ways: ['out', 'left-out'] }] }));
    expect(one.fit?.rolls).toBe(1);
    expect(one.fit?.notes.map((n) => n.code)).toEqual([
      'power/coast-down-one-way',
      'power/coast-down-beyond',
    ]);
    const none = unwrap(await ask('coastDown.fit', { runs: [{ runId, ways: ['left-out', 'left-out'] }] }));
    expect(none).toMatchObject({ fit: null, problems: [] });
    expect(none.rolls).toHaveLength(2);
  });

  it('fits rolls of several runs together, each with its run', async () => {
    const out = await imported('out.csv', rolledLog({ ways: [1] }));
    const back = await imported('back.csv', rolledLog({ ways: [-1] }));
    const { rolls, fit } = unwrap(
      await ask('coastDown.fit', { runs: [{ runId: out }, { runId: back, ways: ['back'] }] }),
    );
    expect(rolls.map((r) => [r.runId, r.way])).toEqual([
      [out, 'out'],
      [back, 'back'],
    ]);
    expect(fit?.rolls).toBe(2);
    expect(fit?.notes.map((n) => n.code)).toContain('power/coast-down-both-ways');
    expect(Math.abs((fit?.roadLoad.a_N ?? 0) - rolledTruth.a)).toBeLessThan(4);
  });

  it('tells by positions which way each roll went, also from one run to the next', async () => {
    const runs = await Promise.all(
      ([1, -1] as const).map(async (way) => ({
        runId: await imported(`${way}.csv`, rolledLog({ ways: [way], hasPosition: true })),
      })),
    );
    const { rolls } = unwrap(await ask('coastDown.fit', { runs }));
    expect(rolls.map((r) => r.way)).toEqual(['out', 'back']);
  });

  it('counts no roll of a drive through town by itself, and refuses more than a fit takes', async () => {
    const runId = await imported('town.csv', rolledLog({ rolls: 101 }));
    const drive = unwrap(await ask('coastDown.fit', { runs: [{ runId }] }));
    expect(drive.rolls).toHaveLength(101);
    expect(drive.rolls.every((r) => r.way === 'left-out')).toBe(true);
    const all = unwrap(await ask('coastDown.fit', { runs: [{ runId, ways: Array(101).fill('out') }] }));
    expect(all).toMatchObject({ fit: null, problems: [{ code: 'power/coast-down-too-many' }] });
  });

  it('refuses a run that is not there, and ways that are none', async () => {
    expect(await ask('coastDown.fit', { runs: [{ runId: 'nobody' }] })).toMatchObject({
      problems: [{ code: 'session/no-run' }],
    });
    expect(
      await host.handle('coastDown.fit', { runs: [{ runId: 'nobody', ways: ['sideways'] }] }, context),
    ).toMatchObject({ problems: [{ code: 'contract/input-invalid', facts: { field: 'runs.0.ways.0' } }] });
  });
});
