import { fail, ok, type Problem, type Result } from '../../core/result/index.ts';
import { attempt } from './disk-problem.ts';
import { sourcePath } from './layout.ts';
import type { OpenSession } from './open-session.ts';
import { sha256 } from './sha256.ts';

/** Longest log that is read into memory at once. */
const longest = 2 ** 31;

/**
 * The log of a run, byte for byte as it was imported: its hash is checked each time it is read.
 *
 * Errors: store/no-run, store/source-missing, store/source-damaged, disk problems.
 */
export function readSource(open: OpenSession, runId: string): Promise<Result<Uint8Array>> {
  return attempt(open.folder, async () => {
    const found = await findSource(open, runId);
    if (!found.ok) return found;
    const { path, damage } = found.value;
    const bytes = await open.inner.fs.readFile(path, longest);
    const problem = damage(sha256(bytes));
    return problem ? fail(problem) : ok(bytes);
  });
}

/** The log of a run, to be read part by part. */
export type SourceStream = {
  readonly size: number;
  /** Fills `into` from where the last read ended; returns the bytes read, 0 at the end. */
  readonly read: (into: Uint8Array) => Promise<number>;
  /** Null where the SHA-256 of all bytes is the one that was imported, else what to tell. */
  readonly damage: (sha256: string) => Problem | null;
  readonly close: () => Promise<void>;
};

/**
 * Opens the log of a run for reading in parts, for logs that should not lie in memory whole. Nothing that was read
 * may be believed before `damage` has been asked.
 *
 * Errors: store/no-run, store/source-missing, disk problems.
 */
export function openSource(open: OpenSession, runId: string): Promise<Result<SourceStream>> {
  return attempt(open.folder, async () => {
    const found = await findSource(open, runId);
    if (!found.ok) return found;
    const { path, damage } = found.value;
    const reader = await open.inner.fs.openRead(path);
    return ok({
      size: (await reader.state()).size,
      read: (into: Uint8Array) => reader.read(into),
      damage,
      close: () => reader.close(),
    });
  });
}

/** Where the log of a run lies, and what to tell of bytes that are not those that were imported. */
async function findSource(
  open: OpenSession,
  runId: string,
): Promise<Result<{ path: string } & Pick<SourceStream, 'damage'>>> {
  const run = open.runs.get(runId);
  if (!run) return fail({ code: 'store/no-run', facts: { runId } });
  const path = sourcePath(open.folder, runId);
  const { name, sha256: imported } = run.record;
  const facts = { runId, name };
  if ((await open.inner.fs.stat(path)) === null) return fail({ code: 'store/source-missing', facts });
  return ok({
    path,
    damage: (hash: string): Problem | null =>
      hash === imported ? null : { code: 'store/source-damaged', facts },
  });
}

/** The runs whose log stood in the folder when the session was opened or they were imported, and does no more. */
export async function lostSources(open: OpenSession): Promise<readonly Problem[]> {
  const lost: Problem[] = [];
  for (const [runId, { record, hasSource }] of open.runs) {
    const isThere = !hasSource || (await open.inner.fs.stat(sourcePath(open.folder, runId))) !== null;
    if (!isThere) lost.push({ code: 'store/source-missing', facts: { runId, name: record.name } });
  }
  return lost;
}
