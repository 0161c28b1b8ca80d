import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { contentHash } from './content-hash.ts';

/**
 * The bundled sample session, copied to where it may be worked in. The copy is kept between starts with
 * whatever was done to it; a changed sample gets a copy of its own.
 *
 * @param samples    folder that holds the bundled session folders
 * @param workFolder where copies go
 * @returns          folder of the copy
 */
export function sampleCopy(samples: string, workFolder: string): string {
  const name = readdirSync(samples, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(samples, entry.name, 'session.json')))
    .map((entry) => entry.name)
    .sort()[0];
  if (name === undefined) throw new Error(`no session folder in ${samples}`);
  const version = contentHash(samples, [name]).slice(0, 12);
  const copy = join(workFolder, version, name);
  if (existsSync(copy)) return copy;
  mkdirSync(join(workFolder, version), { recursive: true });
  // Copied beside it and renamed, so that a start that was interrupted leaves no half of a session.
  const half = mkdtempSync(join(workFolder, version, '.copy-'));
  cpSync(join(samples, name), join(half, name), { recursive: true });
  renameSync(join(half, name), copy);
  return copy;
}
