import { expect, test } from 'vitest';
import type { ChartMark } from '../../../core/handover/index.ts';
import { joinThinLines } from '../../../renderer/chart/join-thin-lines.ts';

const line = (over: Partial<Extract<ChartMark, { kind: 'line' }>>): ChartMark => ({
  kind: 'line',
  ink: 'after',
  dash: 'solid',
  weight: 'thin',
  x: [1, 2],
  y: [10, 20],
  label: '',
  labelSide: 'above',
  ...over,
});

test('thin lines of one ink become one with a gap between them, no sample lost', () => {
  const [only, ...rest] = joinThinLines([line({}), line({ x: [3, 4, 5], y: [30, null, 50] })]);
  expect(rest).toEqual([]);
  expect(only).toMatchObject({ x: [1, 2, 3, 3, 4, 5], y: [10, 20, null, 30, null, 50] });
});

test('another ink, another dash, a main line and one with a label stay their own, in their order', () => {
  const marks = [
    line({}),
    line({ ink: 'before' }),
    line({ dash: 'dotted' }),
    line({ weight: 'main' }),
    line({ label: 'peak' }),
    line({ weight: 'main' }),
  ];
  expect(joinThinLines(marks)).toEqual(marks);
});

test('the marks that were given stay as they were', () => {
  const first = line({});
  joinThinLines([first, line({})]);
  expect(first).toEqual(line({}));
});
