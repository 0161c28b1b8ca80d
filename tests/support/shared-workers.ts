/**
 * Folders whose test files run one after another in one worker, which keeps what it loaded and compiled: a worker of
 * its own for each file spent half of the processor on that. Only where the code under test keeps nothing can no file
 * leave anything behind for the next: `tests/layers` holds core to it, and `shared-workers.test.ts` the tests themselves
 * and what they reach of the renderer.
 */
export const sharedWorkerFolders: readonly string[] = [
  ...[
    'charge',
    'compare',
    'delivery',
    'fit',
    'fluids',
    'handover',
    'injection',
    'ladder',
    'log',
    'mixture',
    'power',
    'session',
    'tables',
    'units',
    'words',
  ].map((area) => `tests/unit/${area}`),
  ...['bench', 'renderer', 'runner'].map((area) => `tests/unit/${area}`),
  'tests/property',
  ...['charge', 'compare', 'delivery', 'fluids', 'injection', 'log', 'mixture', 'power', 'units'].map(
    (area) => `tests/reference/${area}`,
  ),
];

/** Files in those folders that turn the clock, each in a worker of its own. */
export const clockTurners: readonly string[] = ['ask-shared', 'text-keeper'].map(
  (name) => `tests/unit/renderer/${name}.test.ts`,
);

const leavings: readonly RegExp[] = [
  /\bvi\s*\.\s*\w+/,
  /\bprocess\s*\.\s*(env|chdir|on|once|exitCode|argv)\b/,
  /\bglobalThis\b/,
  /\.prototype\.\w+\s*=[^=]/,
  /\b(expect\.extend|configureGlobal)\b/,
  /\bfrom\s+['"][./]+\/electron\//,
];

/** What in the text of a test file could outlast it: doubles, globals, the process, code of the host. */
export function leavingsIn(text: string): readonly string[] {
  return leavings.flatMap((pattern) => pattern.exec(text)?.[0] ?? []);
}

/** The first line of a module that keeps something from one call to the next, or undefined. Sets there are constants. */
export function keptIn(text: string): string | undefined {
  return /^(export )?(let |const \w+(: [^=]+)? = new (Weak)?Map\b).*/m.exec(text)?.[0];
}
