/**
 * Folders whose test files run one after another in one worker, which keeps what it loaded and compiled: a worker of
 * its own for each file spent half of the processor on that. Only where the code under test is pure can no file leave
 * anything behind for the next: `tests/layers` holds core to it, and `shared-workers.test.ts` the tests themselves.
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
  'tests/property',
  ...['charge', 'compare', 'delivery', 'fluids', 'injection', 'log', 'mixture', 'power', 'units'].map(
    (area) => `tests/reference/${area}`,
  ),
];

const leavings: readonly RegExp[] = [
  /\bvi\s*\.\s*\w+/,
  /\bprocess\s*\.\s*(env|chdir|on|once|exitCode|argv)\b/,
  /\bglobalThis\b/,
  /\.prototype\.\w+\s*=[^=]/,
  /\b(expect\.extend|configureGlobal)\b/,
  /\bfrom\s+['"][./]+\/(electron|renderer)\//,
];

/** What in the text of a test file could outlast it: doubles, globals, the process, code that is not pure. */
export function leavingsIn(text: string): readonly string[] {
  return leavings.flatMap((pattern) => pattern.exec(text)?.[0] ?? []);
}
