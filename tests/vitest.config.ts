import { defineConfig } from 'vitest/config';
import { clockTurners, sharedWorkerFolders } from './support/shared-workers.ts';

/** What takes a core for most of a minute is begun first, or the other core waits for it at the end. */
const long = ['tests/faults/kill.test.ts'];
const shared = sharedWorkerFolders.map((folder) => `${folder}/**/*.test.{ts,tsx}`);

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // Ends what hangs; a build machine shared with others must not fail by being busy.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    setupFiles: ['tests/support/seeded-properties.ts'],
    // Begun in the order of their names.
    projects: [
      { extends: true, test: { name: 'long, own worker', include: long } },
      {
        extends: true,
        test: { name: 'shared worker', include: shared, exclude: [...clockTurners], isolate: false },
      },
      {
        extends: true,
        test: {
          name: 'own worker',
          include: ['tests/{unit,reference,property,layers,faults}/**/*.test.{ts,tsx}'],
          exclude: [...shared, ...long],
        },
      },
      { extends: true, test: { name: 'turned clock, own worker', include: [...clockTurners] } },
    ],
  },
});
