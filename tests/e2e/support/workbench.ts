import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { test as base, expect } from 'playwright/test';
import type { Preferences } from '../../../core/contract/index.ts';
import { manyPullsSession } from '../../support/many-pulls-session.ts';
import { copyOfSample, readLogsOfSample } from '../../support/sample-session.ts';
import { showWhole } from '../../support/show-whole.ts';
import { watchErrors } from './console-errors.ts';
import { readInteractions } from './interactions.ts';
import { openWorkbench } from './open-workbench.ts';
import { startWorkbench } from './start-workbench.ts';

type Options = {
  /** What the workbench starts with: a copy of the sample open, entries of 12 and of 1 pull, or nothing open. */
  startsWith: 'sample' | 'many-pulls' | 'nothing';
  preferences: Partial<Preferences>;
};

type Fixtures = {
  /** Session folder that is open, or that the start screen offers as the sample. */
  sessionFolder: string;
  /** A one-time link to the workbench, served by the real host over loopback. */
  link: string;
};

type WorkerFixtures = {
  /**
   * The sample with its logs read, as a person has it from the second opening on: reading them for each test anew took
   * more than a third of what the host does. A sample that the start screen offers is still read for the first time.
   */
  sampleWithCaches: string;
};

/**
 * A test on the built screens over the real host: `page` stands on the workbench already, and a test fails if
 * the page complained of anything in its console. How quick keys and clicks were painted is told at the end of the
 * run and fails nothing: that would be the machine's doing.
 *
 *   test.use({ startsWith: 'nothing', viewport: { width: 1024, height: 768 } });
 */
export const test = base.extend<Options & Fixtures, WorkerFixtures>({
  startsWith: ['sample', { option: true }],
  preferences: [{}, { option: true }],

  sampleWithCaches: [
    // biome-ignore lint/correctness/noEmptyPattern: the shape that a fixture without others has
    async ({}, use) => {
      const folder = copyOfSample();
      await readLogsOfSample(folder);
      await use(folder);
      rmSync(dirname(folder), { recursive: true, force: true });
    },
    { scope: 'worker' },
  ],

  sessionFolder: async ({ startsWith, sampleWithCaches }, use) => {
    const folder =
      startsWith === 'many-pulls'
        ? await manyPullsSession(mkdtempSync(join(tmpdir(), 'onechange-many-')))
        : copyOfSample(startsWith === 'sample' ? sampleWithCaches : undefined);
    await use(folder);
    rmSync(dirname(folder), { recursive: true, force: true });
  },

  link: async ({ sessionFolder, startsWith, preferences }, use) => {
    const workbench = await startWorkbench({
      sampleFolder: sessionFolder,
      isOpen: startsWith !== 'nothing',
      preferences,
    });
    await use(workbench.link);
    await workbench.close();
  },

  page: async ({ page, link }, use, info) => {
    const found = watchErrors(page, new URL(link).origin);
    await showWhole(page);
    await openWorkbench(page, link);
    await use(page);
    const interactions = await readInteractions(page);
    if (interactions)
      info.annotations.push({ type: 'interactions', description: JSON.stringify(interactions) });
    expect(found, 'complaints in the console').toEqual([]);
  },
});

export { expect };
