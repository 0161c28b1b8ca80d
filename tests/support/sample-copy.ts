import { chmodSync, cpSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const sample = new URL('../../sample-sessions/fenmoor-hatch', import.meta.url).pathname;

/** A folder of its own for one test, removed by `remove`. */
export function temporaryFolder(): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-'));
  return {
    folder,
    remove: () => {
      makeRemovable(folder);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A copy of the invented session that a test may change. */
export function sampleCopy(parent: string, name = 'fenmoor-hatch'): string {
  const folder = join(parent, name);
  cpSync(sample, folder, { recursive: true });
  return folder;
}

/** Imported logs are read-only, which some systems let stand in the way of removing them. */
function makeRemovable(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) makeRemovable(path);
    else if ((statSync(path).mode & 0o200) === 0) chmodSync(path, 0o644);
  }
}
