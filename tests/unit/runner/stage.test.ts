import { expect, it } from 'vitest';
import { counts, countsLine, failedOnly, passedOnly } from '../../runner/stage.ts';

it('the last line sums all stages, and names skipped ones only where there are any', () => {
  const skipped = { passed: 2, failures: [], skips: ['desktop (no binary)'] };
  expect(countsLine(counts([passedOnly(5), failedOnly('a', 'b')]))).toBe('5 passed, 2 failed');
  expect(countsLine(counts([passedOnly(5), skipped]))).toBe('7 passed, 0 failed, 1 skipped');
  expect(countsLine(counts([]))).toBe('0 passed, 0 failed');
});
