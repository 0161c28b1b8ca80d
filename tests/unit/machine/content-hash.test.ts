import { mkdirSync, mkdtempSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { contentHash } from '../../../electron/machine/content-hash.ts';

it('the screens are built anew when a source changed, moved or came, and not for what was built', () => {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-build-'));
  mkdirSync(join(folder, 'renderer', 'dist'), { recursive: true });
  writeFileSync(join(folder, 'renderer', 'main.tsx'), 'a');
  writeFileSync(join(folder, 'lock.json'), '1');
  const hash = (): string => contentHash(folder, ['renderer', 'lock.json', 'not-there']);

  const first = hash();
  writeFileSync(join(folder, 'renderer', 'dist', 'index.html'), 'built');
  expect(hash()).toBe(first);
  writeFileSync(join(folder, 'renderer', 'main.tsx'), 'b');
  const changed = hash();
  renameSync(join(folder, 'renderer', 'main.tsx'), join(folder, 'renderer', 'other.tsx'));
  const moved = hash();
  writeFileSync(join(folder, 'lock.json'), '2');
  expect(new Set([first, changed, moved, hash()]).size).toBe(4);
});
