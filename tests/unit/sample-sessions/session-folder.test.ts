import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { entryBefore } from '../../../core/session/index.ts';
import { closeSession, type OpenSession, openSession, readSource } from '../../../electron/store/index.ts';
import { sampleFolder, truth } from '../../support/sample-truth.ts';

const now = '2027-03-15T08:00:00.000Z';

describe('the bundled session folder', () => {
  let parent: string;
  let open: OpenSession;

  beforeAll(async () => {
    parent = await mkdtemp(join(tmpdir(), 'sample-'));
    const copy = join(parent, 'Fenmoor hatch');
    await cp(fileURLToPath(new URL('fenmoor-hatch', sampleFolder)), copy, { recursive: true });
    open = unwrap(await openSession(copy, { now }));
  });
  afterAll(async () => {
    await closeSession(open);
    await rm(parent, { recursive: true, force: true });
  });

  it('opens without a remark and says that it is invented', () => {
    expect(open.notices).toEqual([]);
    expect(open.readOnly).toBeNull();
    expect(open.session.isInvented).toBe(true);
    expect(open.session.note).toContain('Invented');
  });

  it('holds every log whole', async () => {
    expect(open.runs.size).toBe(truth.entries.flatMap((e) => e.files).length);
    for (const [id, run] of open.runs) {
      expect((await readSource(open, id)).ok, id).toBe(true);
      expect(run.record.name).toBe(`${id}.csv`);
    }
  });

  it('tells the story of the truth: the same entries, each judged against the one before', () => {
    expect(open.session.ledger.map((e) => e.id)).toEqual(truth.entries.map((e) => e.id));
    for (const entry of truth.entries) {
      expect(entryBefore(open.session, entry.id)?.id).toBe(entry.against);
      const runs = open.session.ledger.find((e) => e.id === entry.id)?.runs ?? [];
      expect(runs.map((r) => `${r.runId}.csv`)).toEqual(entry.files.map((f) => f.file));
    }
  });
});
