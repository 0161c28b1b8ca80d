import { expect, it } from 'vitest';
import { interactionLines, readPlaywrightReport } from '../../runner/end-to-end-stage.ts';

const test = (status: 'expected' | 'unexpected' | 'flaky' | 'skipped', reason?: string) => ({
  title: `a ${status} test`,
  file: 'bench.spec.ts',
  tests: [
    {
      projectName: 'browser',
      status,
      annotations: reason ? [{ type: 'skip', description: reason }] : [],
      results: [{ errors: status === 'unexpected' ? [{ message: 'no verdict' }] : [] }],
    },
  ],
});

it('tests in nested suites are counted, a lucky second try as failed, a skip with its reason', () => {
  const suites = [
    { title: 'outer', specs: [test('expected')], suites: [{ title: 'inner', specs: [test('unexpected')] }] },
    { title: 'other', specs: [test('flaky'), test('skipped', 'no Electron binary')] },
  ];
  expect(readPlaywrightReport({ suites, errors: [] })).toEqual({
    passed: 1,
    failures: [
      'bench.spec.ts: a unexpected test [browser]\nno verdict',
      'bench.spec.ts: a flaky test [browser]',
    ],
    skips: ['bench.spec.ts: a skipped test [browser] (no Electron binary)'],
  });
});

it('an error outside any test is a failure, and so is no test at all', () => {
  expect(readPlaywrightReport({ suites: [], errors: [{ message: 'bad settings' }] }).failures).toEqual([
    'bad settings',
  ]);
  expect(readPlaywrightReport({ suites: [], errors: [] }).failures).toHaveLength(1);
});

it('keys and clicks of all tests are summed, and the one that was painted latest is named', () => {
  const watched = (title: string, number: number, ...slow: number[]) => ({
    ...test('expected'),
    title,
    tests: test('expected').tests.map((one) => ({
      ...one,
      annotations: [
        {
          type: 'interactions',
          description: JSON.stringify({
            number,
            slow: slow.map((duration_ms) => ({
              event: 'keydown',
              target: duration_ms > 200 ? 'button Keep' : '',
              duration_ms,
              waited_ms: 12,
              listeners_ms: 60,
            })),
          }),
        },
      ],
    })),
  });
  const specs = [watched('quick', 20), watched('slow', 5, 112, 240), test('expected')];
  expect(interactionLines({ suites: [{ title: 'all', specs }], errors: [] })).toEqual([
    '25 keys and clicks, 2 of them painted later than 100 ms, the latest:',
    '  240 ms (waited 12, listeners 60, drawn 168): keydown at button Keep in bench.spec.ts: slow',
    '  112 ms (waited 12, listeners 60, drawn 40): keydown in bench.spec.ts: slow',
  ]);
  expect(interactionLines({ suites: [{ title: 'all', specs: [watched('quick', 3)] }], errors: [] })).toEqual([
    '3 keys and clicks, 0 of them painted later than 100 ms',
  ]);
  const many = [watched('slow', 30, ...Array.from({ length: 14 }, (_, i) => 104 + i))];
  expect(interactionLines({ suites: [{ title: 'all', specs: many }], errors: [] })).toHaveLength(11);
});
