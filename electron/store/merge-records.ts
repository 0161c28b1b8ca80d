import { join } from 'node:path';
import { z } from 'zod';
import { ok, type Result } from '../../core/result/index.ts';
import type { MergeConflict } from '../../core/session/index.ts';
import { attempt } from './disk-problem.ts';
import type { FileSystem } from './file-system.ts';
import { ensureFolder, isoOf, listIfThere, readIfPossible, stampOf } from './history.ts';
import { folderNames } from './layout.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { replaceFile } from './replace-file.ts';
import { openSealed } from './seal.ts';
import { sha256 } from './sha256.ts';

/** A conflict with the file that it stands in, `session.json` or `runs/<id>/run.json`. */
export type FileConflict = MergeConflict & { readonly file: string };

/** What one merge left to decide. */
export type MergeRecord = {
  /** Its path inside the session folder. */
  readonly file: string;
  readonly mergedAt: string;
  /** Empty where the record is damaged. */
  readonly conflicts: readonly FileConflict[];
  readonly isDamaged: boolean;
};

/** What stands in the name holds the content: the first digits of its SHA-256. */
const recordName = /^merge-(\d{8}T\d{6}Z)-([0-9a-f]{12})\.json$/;

const RecordSchema = z.object({
  mergedAt: z.string(),
  conflicts: z.array(
    z.object({
      file: z.string(),
      path: z.string(),
      kind: z.enum(['value', 'removed', 'order']),
      base: z.unknown(),
      mine: z.unknown(),
      theirs: z.unknown(),
    }),
  ),
});

/** Writes down what two copies had changed in different ways, with both values, durably; returns its path. */
export async function writeMergeRecord(
  folder: string,
  record: { readonly conflicts: readonly FileConflict[]; readonly theirs: unknown },
  now: string,
  fs: FileSystem,
): Promise<string> {
  const text = `${JSON.stringify({ mergedAt: now, ...record }, null, 2)}\n`;
  const name = `merge-${stampOf(now)}-${sha256(text).slice(0, 12)}.json`;
  await ensureFolder(join(folder, folderNames.history), fs);
  await replaceFile(join(folder, folderNames.history, name), text, fs);
  return `${folderNames.history}/${name}`;
}

/**
 * What the merges of a session left to decide, the oldest first. Changes nothing.
 *
 * Errors: disk problems of the folder; a damaged record is told in its own line.
 */
export function mergeRecords(
  folder: string,
  fs: FileSystem = nodeFileSystem,
): Promise<Result<MergeRecord[]>> {
  return attempt(folder, async () => {
    const records: MergeRecord[] = [];
    for (const { name, kind } of await listIfThere(join(folder, folderNames.history), fs)) {
      const [, stamp, hash] = recordName.exec(name) ?? [];
      if (stamp === undefined || hash === undefined || kind !== 'file') continue;
      const file = `${folderNames.history}/${name}`;
      const bytes = await readIfPossible(join(folder, file), fs);
      const isWhole = bytes !== null && sha256(bytes).startsWith(hash);
      // A stranger can make the name fit: the content is checked as anything else that comes from a folder.
      const parsed = isWhole ? RecordSchema.safeParse(openSealed(bytes)?.json) : null;
      if (parsed?.success) records.push({ file, ...parsed.data, isDamaged: false });
      else records.push({ file, mergedAt: isoOf(stamp), conflicts: [], isDamaged: true });
    }
    return ok(records);
  });
}
