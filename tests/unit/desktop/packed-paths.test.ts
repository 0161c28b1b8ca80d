import { readdirSync, readFileSync } from 'node:fs';
import { join, matchesGlob, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packaging } from '../../../electron/desktop/packaging.ts';

const project = new URL('../../..', import.meta.url).pathname;
const dist = join('electron', 'desktop', 'dist');

/** Whether electron-builder's list takes a file along; later patterns that begin with ! take it out again. */
function isPacked(path: string): boolean {
  return (packaging.files as readonly string[]).reduce(
    (is, pattern) =>
      pattern.startsWith('!') ? is && !matchesGlob(path, pattern.slice(1)) : is || matchesGlob(path, pattern),
    false,
  );
}

function sources(folder: string): string[] {
  return readdirSync(join(project, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));
}

describe('what the packed program reads while it runs', () => {
  const main = readFileSync(join(project, 'electron/desktop/main.ts'), 'utf8');

  it('is in the archive: its scripts, the workers that read logs, the screens', () => {
    // As main.ts goes from its own folder.
    expect(main).toContain("join(here, '..', '..', '..', 'renderer', 'dist')");
    expect(main).toContain("join(here, 'preload.cjs')");
    const screens = relative(project, join(project, dist, '..', '..', '..', 'renderer', 'dist'));
    const scripts = ['main.mjs', 'preload.cjs', 'log-worker.mjs', 'row-worker.mjs', 'chunk-abc.mjs'];
    for (const file of [
      'package.json',
      String(packaging.extraMetadata.main),
      ...scripts.map((name) => join(dist, name)),
      join(screens, 'index.html'),
      join(screens, 'assets', 'index-abc.js'),
    ]) {
      expect(isPacked(file), file).toBe(true);
    }
    for (const file of ['electron/desktop/main.ts', 'core/log/index.ts', 'tests/x', 'sample-sessions/x']) {
      expect(isPacked(file), file).toBe(false);
    }
  });

  it('finds the sample beside the archive, where files can be copied from', () => {
    const [sample] = packaging.extraResources as { from: string; to: string }[];
    expect(main).toContain("join(process.resourcesPath ?? here, 'sample-sessions')");
    expect(sample).toEqual({ from: 'sample-sessions/fenmoor-hatch', to: 'sample-sessions/fenmoor-hatch' });
    expect(readdirSync(join(project, sample?.from ?? ''))).toContain('session.json');
  });

  it('is all of it: no other code of the program asks where it stands', () => {
    const asking = [
      'core',
      'electron/host',
      'electron/store',
      'electron/machine',
      'electron/screens',
      'electron/desktop',
    ]
      .flatMap(sources)
      .filter((path) => !/draw-icon|vite\.config/.test(path))
      .filter((path) => {
        const text = readFileSync(join(project, path), 'utf8');
        return /import\.meta\.(?:url|dirname|filename|resolve)|process\.resourcesPath|process\.cwd\(/.test(
          text,
        );
      });
    expect(asking.sort()).toEqual([
      'electron/desktop/main.ts',
      // Takes the fonts from the packages, or from the built screens, which are packed.
      'electron/host/handover-fonts.ts',
      // Has the program's version to fall back on where no sources stand beside it.
      'electron/host/log-cache.ts',
      // Built beside main by the plugin of vite.config.ts; run as built in e2e/desktop/built-scripts.
      'electron/host/log-crew.ts',
    ]);
    const crew = readFileSync(join(project, 'electron/host/log-crew.ts'), 'utf8');
    for (const worker of ['log-worker', 'row-worker'])
      expect(crew).toContain(`new Worker(new URL('./${worker}.ts', import.meta.url)`);
  });
});
