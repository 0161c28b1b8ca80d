import { cpSync, existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type {
  RequestContext,
  RequestInput,
  RequestName,
  RequestOutput,
} from '../../../core/contract/index.ts';
import { type Result, unwrap } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';

const context: RequestContext = { requestId: 't', signal: { aborted: false }, progress: () => undefined };
const runId = '0-baseline-b';

let place: ReturnType<typeof temporaryFolder>;
let folder: string;
let host: ReturnType<typeof createHost>;

const ask = <N extends RequestName>(name: N, input: RequestInput<N>) =>
  host.handle(name, input, context) as Promise<Result<RequestOutput<N>>>;
const note = (text: string) =>
  ask('session.edit', { edits: [{ type: 'run.set', runId, patch: { note: text } }] });
const run = () => join(folder, 'runs', runId);
const lost = { problems: [{ code: 'store/source-missing', facts: { runId, name: '0-baseline-b.csv' } }] };

beforeEach(async () => {
  place = temporaryFolder();
  folder = sampleCopy(place.folder);
  host = createHost({
    version: '0.0.0',
    shell: 'web',
    sessionsFolder: place.folder,
    sampleFolder: null,
    preferences: preferencesInMemory(),
    now: () => '2027-03-14T12:00:00.000Z',
    newId: () => 'id',
  });
  unwrap(await ask('sessions.open', { folder }));
  unwrap(await note('before it was lost'));
  cpSync(run(), join(place.folder, 'kept'), { recursive: true });
  rmSync(run(), { recursive: true, force: true });
});

afterEach(async () => {
  await host.close();
  place.remove();
});

describe('a run whose folder was taken out of an open session', () => {
  it('is named with its remedy where something is said of it, and nothing of that is kept', async () => {
    const said = await note('after');
    expect(said).toMatchObject(lost);
    const [problem] = said.ok ? [] : said.problems;
    for (const language of ['en', 'de'] as const)
      expect(problem && problemText(problem, createShow(language, metricUnits)).message).toContain(
        '0-baseline-b.csv',
      );
    const { runs } = unwrap(await ask('session.get', {})) ?? { runs: [] };
    expect(runs.find((r) => r.record.id === runId)?.record.note).toBe('before it was lost');
  });

  it('is named where the session is packed, and no zip is left that lacks it', async () => {
    const path = join(place.folder, 'packed.zip');
    expect(await ask('session.pack', { path })).toMatchObject(lost);
    expect(existsSync(path)).toBe(false);
  });

  it('goes back to its place with what was said of it where its original is imported again', async () => {
    const original = join(place.folder, 'kept', 'source.csv');
    const { duplicateOf } = unwrap(await ask('runs.import', { path: original, entryId: null }));
    expect(duplicateOf).toBe(runId);
    expect(readFileSync(join(run(), 'source.csv'))).toEqual(readFileSync(original));
    unwrap(await ask('session.pack', { path: join(place.folder, 'packed.zip') }));
    unwrap(await ask('sessions.close', {}));
    const again = unwrap(await ask('sessions.open', { folder }));
    expect(again.notices).toEqual([]);
    expect(again.runs.find((r) => r.record.id === runId)?.record.note).toBe('before it was lost');
    expect((await note('after')).ok).toBe(true);
  });

  it('may be left behind once the session was opened without it', async () => {
    unwrap(await ask('sessions.close', {}));
    const { notices } = unwrap(await ask('sessions.open', { folder }));
    expect(notices.map((n) => n.code)).toEqual(['store/file-missing']);
    expect((await ask('session.pack', { path: join(place.folder, 'packed.zip') })).ok).toBe(true);
  });
});
