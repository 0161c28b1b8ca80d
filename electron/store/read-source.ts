import { fail, ok, type Result } from '../../core/result/index.ts';
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
