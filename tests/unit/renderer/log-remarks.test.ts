import { describe, expect, it } from 'vitest';
import type { RunSummary } from '../../../core/contract/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText, problemText } from '../../../core/words/index.ts';
import { logRemarks } from '../../../renderer/columns/log-remarks.ts';

const show = createShow('en', metricUnits);
const words = {
  note: (n: Parameters<typeof noteText>[0]) => noteText(n, show),
  problem: (p: Parameters<typeof problemText>[0]) => problemText(p, show),
};
const run = (name: string, problems: RunSummary['problems'], warnings: RunSummary['warnings']) =>
  ({ record: { name }, problems, warnings }) as RunSummary;
const cut = { code: 'log/last-row-cut' as const, facts: { line: 900 } };

describe('what was found in logs', () => {
  it('is told once for all logs alike, what is wrong first, with the way to mend it', () => {
    const missing = (file: string) => ({
      code: 'log/formula-symbol-unknown' as const,
      facts: { symbol: 'lambda' },
      where: { file, column: 'Twice' },
    });
    const remarks = logRemarks(
      [
        run('a.csv', [], [cut]),
        run('b.csv', [missing('b.csv')], [cut]),
        run('c.csv', [missing('c.csv')], []),
      ],
      words,
    );
    expect(remarks.map((r) => [r.logs, r.remedy !== null])).toEqual([
      [['b.csv', 'c.csv'], true],
      [['a.csv', 'b.csv'], false],
    ]);
    expect(remarks[0]?.text).toBe('column Twice: This log has nothing named “lambda”.');
    expect(remarks[1]?.text).toContain('900');
  });

  it('is nothing where nothing is', () => {
    expect(logRemarks([run('a.csv', [], [])], words)).toEqual([]);
  });
});
