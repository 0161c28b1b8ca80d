import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/{unit,reference,property,layers,faults}/**/*.test.{ts,tsx}'],
    // Ends what hangs; a build machine shared with others must not fail by being busy.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    setupFiles: ['tests/support/seeded-properties.ts'],
  },
});
