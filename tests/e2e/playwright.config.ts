import { defineConfig } from 'playwright/test';
import { turnedOff } from './support/turned-off.ts';

const isRoot = process.getuid?.() === 0;

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  // A retry would hide a test that fails now and then.
  retries: 0,
  workers: 2,
  fullyParallel: true,
  // Ten times what a free machine takes: a build machine shared with others must not fail by being busy.
  timeout: 180_000,
  expect: { timeout: 20_000 },
  forbidOnly: true,
  snapshotPathTemplate: '{testDir}/snapshots/{testFilePath}/{arg}{ext}',
  // A missing snapshot fails; making a new one is its own command, and someone looks.
  updateSnapshots: 'none',
  // What the program runs as it is: Playwright would translate it for each worker, the built script that draws ahead for
  // five seconds every time.
  build: { external: ['**/core/**', '**/electron/**', '**/renderer/picture/dist/**'] },
  use: {
    viewport: { width: 1280, height: 720 },
    locale: 'en-GB',
    timezoneId: 'UTC',
    // The recorder of traces takes a fifth of the machine, which keys and clicks then wait for, and runs scripts in
    // every frame, which the summary's forbids. To look into a failure: `--trace on`, without handover and looks.
    trace: 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(process.env.ONECHANGE_BROWSER ? { executablePath: process.env.ONECHANGE_BROWSER } : {}),
      args: [
        '--disable-gpu',
        // Letters as wide as the font says on every system: hinting would round them and wrap lines elsewhere.
        '--font-render-hinting=none',
        '--force-color-profile=srgb',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
        `--disable-features=${turnedOff.join(',')}`,
        // The browser's own sandbox refuses to run as root, as on build machines.
        ...(isRoot ? ['--no-sandbox'] : []),
      ],
    },
  },
  projects: [
    { name: 'browser', testIgnore: 'desktop/**' },
    { name: 'desktop', testMatch: 'desktop/**/*.spec.ts' },
  ],
});
