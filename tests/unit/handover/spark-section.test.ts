import { describe, expect, it } from 'vitest';
import { sparkSection } from '../../../core/handover/document/spark-section.ts';
import type { Teller } from '../../../core/handover/document/teller.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, handoverPhrases } from '../../../core/words/index.ts';

/** A table of so many engine speeds, every cell changed by the same step. */
function tablesOf(columns: number, step_deg: number) {
  const engineSpeed_rpm = Array.from({ length: columns }, (_, c) => 1000 + 250 * c);
  const row = engineSpeed_rpm.map(() => step_deg);
  const table = {
    name: 'Spark',
    readAt: '2027-03-14T09:00:00.000Z',
    isInLedger: true,
    engineSpeed_rpm,
    load: { kind: 'gauge', unit: 'bar', values: [0.6, 1] },
    asLeft_deg: [row, row],
    change_deg: [row, row],
    cells: 2 * columns,
    changesWithout: [],
  };
  const teller = {
    facts: { sparkTables: [table] },
    words: handoverPhrases('en'),
    show: createShow('en', metricUnits),
  } as unknown as Teller;
  return sparkSection(teller).blocks.flatMap((b) => (b.kind === 'table' ? [b] : []));
}

describe('a spark table on paper', () => {
  it('is one table up to 16 engine speeds, then several of like width, none of them left out', () => {
    const widths = (columns: number) => tablesOf(columns, 1).map((t) => t.columns.length - 1);
    expect(widths(16)).toEqual([16]);
    expect(widths(17)).toEqual([9, 8]);
    expect(widths(33)).toEqual([11, 11, 11]);
    const said = tablesOf(17, 1).flatMap((t) => t.columns.slice(1).map((c) => c.title));
    expect(said).toHaveLength(17);
    expect(said.at(-1)).toBe('5,000');
  });

  it('reads a quarter of a degree as a quarter', () => {
    const cells = (step_deg: number) => tablesOf(2, step_deg)[0]?.rows[0]?.cells.map((c) => c.text);
    expect(cells(0.25)).toEqual(['0.6', '+0.25', '+0.25']);
    expect(cells(-0.5)).toEqual(['0.6', '−0.5', '−0.5']);
  });
});
