import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** SHA-256 over names and bytes of all files under `paths`; built folders and packages are left out. */
export function contentHash(folder: string, paths: readonly string[]): string {
  const hash = createHash('sha256');
  for (const path of paths.flatMap((one) => filesUnder(folder, one)))
    hash
      .update(path)
      .update('\0')
      .update(readFileSync(join(folder, path)))
      .update('\0');
  return hash.digest('hex');
}

function filesUnder(folder: string, path: string): readonly string[] {
  const whole = join(folder, path);
  if (!existsSync(whole)) return [];
  if (!statSync(whole).isDirectory()) return [path];
  return readdirSync(whole)
    .filter((name) => name !== 'dist' && name !== 'node_modules')
    .sort()
    .flatMap((name) => filesUnder(folder, `${path}/${name}`));
}
