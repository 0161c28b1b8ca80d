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
    const run = open.runs.get(runId);
    if (!run) return fail({ code: 'store/no-run', facts: { runId } });
    const { fs } = open.inner;
    const path = sourcePath(open.folder, runId);
    const { name } = run.record;
    if ((await fs.stat(path)) === null) return fail({ code: 'store/source-missing', facts: { runId, name } });
    const bytes = await fs.readFile(path, longest);
    if (sha256(bytes) !== run.record.sha256) {
      return fail({ code: 'store/source-damaged', facts: { runId, name } });
    }
    return ok(bytes);
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
    const run = open.runs.get(runId);
    if (!run) return fail({ code: 'store/no-run', facts: { runId } });
    const { fs } = open.inner;
    const path = sourcePath(open.folder, runId);
    const { name, sha256: imported } = run.record;
    if ((await fs.stat(path)) === null) return fail({ code: 'store/source-missing', facts: { runId, name } });
    const reader = await fs.openRead(path);
    return ok({
      size: (await reader.state()).size,
      read: (into: Uint8Array) => reader.read(into),
      damage: (hash: string): Problem | null =>
        hash === imported ? null : { code: 'store/source-damaged', facts: { runId, name } },
      close: () => reader.close(),
    });
  });
}
