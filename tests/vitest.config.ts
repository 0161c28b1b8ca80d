import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/{unit,reference,property,layers,faults}/**/*.test.{ts,tsx}'],
    testTimeout: 30_000,
    hookTimeout: 30_000,
    maxWorkers: 2,
    setupFiles: ['tests/support/seeded-properties.ts'],
  },
});
