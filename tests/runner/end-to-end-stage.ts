import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildRenderer } from '../../electron/launch/build-renderer.ts';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';
import type { Interactions } from '../e2e/support/interactions.ts';
import { findBrowser } from './browser.ts';
import { runCommand } from './run-command.ts';
import { failedOnly, type Stage, type StageResult } from './stage.ts';

type Test = {
  readonly projectName: string;
  readonly status: 'expected' | 'unexpected' | 'flaky' | 'skipped';
  readonly annotations: readonly { readonly type: string; readonly description?: string }[];
  readonly results: readonly { readonly errors: readonly { readonly message?: string }[] }[];
};
type Spec = { readonly title: string; readonly file: string; readonly tests: readonly Test[] };
type Suite = { readonly title: string; readonly specs: readonly Spec[]; readonly suites?: readonly Suite[] };
export type PlaywrightReport = {
  readonly suites: readonly Suite[];
  readonly errors: readonly { readonly message?: string }[];
};

/** A person's path in a real browser, on the screens as built. */
export function endToEndStage(say: (line: string) => void, limit_s = 2700): Stage {
  return {
    name: 'end-to-end',
    run: async () => {
      if (!buildRenderer(say)) return failedOnly('end-to-end: the screens do not build');
      const browser = await findBrowser(say);
      if ('problem' in browser) return failedOnly(`end-to-end: ${browser.problem}`);
      say(`Browser: ${browser.path}`);
      const folder = mkdtempSync(join(tmpdir(), 'onechange-report-'));
      try {
        const report = join(folder, 'report.json');
        const playwright = join(projectFolder, 'node_modules', 'playwright', 'cli.js');
        const args = [
          playwright,
          'test',
          '--config',
          'tests/e2e/playwright.config.ts',
          '--reporter=list,json',
        ];
        const finished = await runCommand(process.execPath, args, {
          isLoud: true,
          limit_s,
          env: {
            ONECHANGE_BROWSER: browser.path,
            PLAYWRIGHT_JSON_OUTPUT_NAME: report,
            NO_COLOR: '1',
            FORCE_COLOR: '0',
          },
        });
        if (finished.isTimedOut) return failedOnly(`end-to-end: not finished after ${limit_s} s`);
        if (!existsSync(report)) return failedOnly('end-to-end: no report was written');
        const told: PlaywrightReport = JSON.parse(readFileSync(report, 'utf8'));
        for (const line of interactionLines(told)) say(line);
        const result = readPlaywrightReport(told);
        if (finished.code === 0 || result.failures.length > 0) return result;
        return { ...result, failures: ['end-to-end: an error outside any test'] };
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  };
}

/** So many of the latest are told. */
const mostTold = 10;

/**
 * How many keys and clicks of all tests were painted later than 100 ms, and the latest of them with their place. What
 * a busy machine does shows as waiting and as drawing; long listeners are the program's own.
 */
export function interactionLines(report: PlaywrightReport): readonly string[] {
  const told = report.suites
    .flatMap(specsOf)
    .flatMap((spec) =>
      spec.tests.flatMap((test) =>
        test.annotations
          .filter(({ type }) => type === 'interactions')
          .map(({ description = '' }) => ({ spec, ...(JSON.parse(description) as Interactions) })),
      ),
    );
  const number = told.reduce((sum, one) => sum + one.number, 0);
  const slow = told
    .flatMap(({ spec, slow }) => slow.map((one) => ({ ...one, place: `${spec.file}: ${spec.title}` })))
    .sort((a, b) => b.duration_ms - a.duration_ms);
  return [
    `${number} keys and clicks, ${slow.length} of them painted later than 100 ms${slow.length > 0 ? ', the latest:' : ''}`,
    ...slow.slice(0, mostTold).map((one) => {
      const drawn_ms = one.duration_ms - one.waited_ms - one.listeners_ms;
      const parts = `waited ${one.waited_ms}, listeners ${one.listeners_ms}, drawn ${drawn_ms}`;
      return `  ${one.duration_ms} ms (${parts}): ${one.event} ${one.target && `at ${one.target} `}in ${one.place}`;
    }),
  ];
}

/** A test that passed only when tried again counts as failed. */
export function readPlaywrightReport(report: PlaywrightReport): StageResult {
  const specs = report.suites.flatMap(specsOf);
  const all = specs.flatMap((spec) =>
    spec.tests.map((test) => ({ ...test, name: `${spec.file}: ${spec.title} [${test.projectName}]` })),
  );
  const failures = [
    ...all
      .filter((test) => test.status === 'unexpected' || test.status === 'flaky')
      .map((test) => [test.name, ...messages(test)].join('\n')),
    ...report.errors.map((error) => error.message ?? 'an error without a message'),
  ];
  const passed = all.filter((test) => test.status === 'expected').length;
  const skips = all
    .filter((test) => test.status === 'skipped')
    .map((test) => {
      const reason = test.annotations.find((one) => one.type === 'skip')?.description;
      return reason ? `${test.name} (${reason})` : test.name;
    });
  if (passed + failures.length + skips.length === 0) return failedOnly('no test was found');
  return { passed, failures, skips };
}

function specsOf(suite: Suite): readonly Spec[] {
  return [...suite.specs, ...(suite.suites ?? []).flatMap(specsOf)];
}

function messages(test: Test): readonly string[] {
  return test.results.flatMap((result) => result.errors.map((error) => error.message ?? ''));
}
