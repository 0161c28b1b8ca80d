import { expect, test } from 'vitest';
import type { ChartMark } from '../../../core/handover/index.ts';
import { isThin, thinPaths } from '../../../renderer/chart/thin-paths.ts';

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

test('thin lines of one ink become one path, each begun anew, with their gaps', () => {
  expect(thinPaths([line({}), line({ x: [3, 4, 5, 6], y: [30, null, 50, 45] })])).toEqual([
    { ink: 'after', dash: 'solid', path: 'M1,10L2,20M3,30M5,50L6,45' },
  ]);
});

test('another ink and another dash are paths of their own, in their order', () => {
  const paths = thinPaths([line({}), line({ ink: 'before' }), line({ dash: 'dotted' }), line({})]);
  expect(paths.map(({ ink, dash }) => [ink, dash])).toEqual([
    ['after', 'solid'],
    ['before', 'solid'],
    ['after', 'dotted'],
  ]);
});

test('a main line, one with a label and one without a value are none of them', () => {
  const others = [line({ weight: 'main' }), line({ label: 'peak' })];
  expect(others.filter(isThin)).toEqual([]);
  expect(thinPaths([...others, line({ y: [null, null] })])).toEqual([]);
});

test('a sample that lies on the line beside it is left out, one beyond the tolerance is not', () => {
  const curve = line({ x: [0, 1, 2, 3, 4], y: [0, 1.01, 2, 3.5, 4] });
  expect(thinPaths([curve], 0.1)[0]?.path).toBe('M0,0L2,2L3,3.5L4,4');
});
