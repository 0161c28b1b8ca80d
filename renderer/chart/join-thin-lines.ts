import type { ChartMark } from '../../core/handover/index.ts';

type Line = Extract<ChartMark, { kind: 'line' }>;

const isThin = (mark: ChartMark): mark is Line =>
  mark.kind === 'line' && mark.weight === 'thin' && mark.label === '';

/**
 * The thin lines of one ink and dash as one line with gaps, in the place of the first of them: three hundred pulls
 * drawn one by one would hold the screen up for as long as it takes to read them.
 */
export function joinThinLines(marks: readonly ChartMark[]): ChartMark[] {
  const joined: ChartMark[] = [];
  const open = new Map<string, { x: number[]; y: (number | null)[] }>();
  for (const mark of marks) {
    if (!isThin(mark)) {
      joined.push(mark);
      continue;
    }
    const style = `${mark.ink} ${mark.dash}`;
    const before = open.get(style);
    if (before) {
      before.x.push(mark.x[0] ?? 0);
      before.y.push(null);
      for (const x of mark.x) before.x.push(x);
      for (const y of mark.y) before.y.push(y);
      continue;
    }
    const line = { x: [...mark.x], y: [...mark.y] };
    open.set(style, line);
    joined.push({ ...mark, ...line });
  }
  return joined;
}
