import type { ChartInk, ChartLine, ChartMark } from '../../core/handover/index.ts';
import { bends } from './bends.ts';

/** Thin lines of one ink and dash in one path, in the units of the axes: M and L as in SVG 1.1, 8.3. */
export type ThinPath = { readonly ink: ChartInk; readonly dash: ChartLine['dash']; readonly path: string };

export const isThin = (mark: ChartMark): mark is ChartLine =>
  mark.kind === 'line' && mark.weight === 'thin' && mark.label === '';

/**
 * The thin lines among these marks, in as few paths as they have looks: three hundred pulls drawn one by one would
 * hold the screen up for as long as it takes to read them. A lone sample between two gaps is not drawn.
 *
 * @param within how far a line may be off from its samples, in y's unit
 */
export function thinPaths(marks: readonly ChartMark[], within = 0): ThinPath[] {
  const paths = new Map<string, { ink: ChartInk; dash: ChartLine['dash']; parts: string[] }>();
  for (const mark of marks) {
    if (!isThin(mark)) continue;
    const { ink, dash } = mark;
    const look = `${ink} ${dash}`;
    const known = paths.get(look) ?? { ink, dash, parts: [] };
    paths.set(look, known);
    let pen = 'M';
    for (const i of bends(mark.x, mark.y, within)) {
      const y = mark.y[i] ?? null;
      if (y !== null) known.parts.push(`${pen}${mark.x[i] ?? 0},${y}`);
      pen = y === null ? 'M' : 'L';
    }
  }
  return [...paths.values()]
    .filter(({ parts }) => parts.length > 0)
    .map(({ ink, dash, parts }) => ({ ink, dash, path: parts.join('') }));
}
