import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const sample = new URL('../../sample-sessions/fenmoor-hatch', import.meta.url).pathname;

/** A fresh copy of the bundled sample session that a test may do anything to. */
export function copyOfSample(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'onechange-sample-')), 'fenmoor-hatch');
  cpSync(sample, folder, { recursive: true });
  return folder;
}
