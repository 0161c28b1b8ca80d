import type { ChartInk, ChartMark, ChartPanel, ChartSpec } from '../../core/handover/index.ts';
import { frame, type PanelBox, panelBoxes, pixelAt } from './chart-frame.ts';

/** A word in a plot. x and y are pixels of the plot; the word lies at them as `align` and `base` say. */
export type ChartText = {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly align: 'start' | 'middle' | 'end';
  readonly base: 'top' | 'middle' | 'bottom';
  readonly ink: ChartInk;
};

/** From a line to the word above or below it [px]. */
const beside_px = 6;

/** What stands at the axes: ticks and titles of all panels, of x, and the name of the strip under them. */
export function axisTexts(spec: ChartSpec, width: number, height: number): ChartText[] {
  const { panels, spans } = panelBoxes(spec, height);
  const soft = { ink: 'soft' } as const;
  const below = height - frame.bottom + beside_px;
  const texts: ChartText[] = spec.panels.flatMap(({ y: axis }, i) => {
    const box = panels[i] ?? { top: 0, height: 0 };
    const title = {
      text: axis.title,
      x: frame.left,
      y: box.top - 4,
      align: 'start',
      base: 'bottom',
    } as const;
    const ticks = axis.ticks.map(({ at, text }) => {
      const y = gridRow(box, axis.range, at);
      return { ...soft, text, x: frame.left - beside_px, y, align: 'end', base: 'middle' } as const;
    });
    return [...ticks, { ...soft, ...title }];
  });
  const underX = { ...soft, align: 'middle', base: 'top' } as const;
  for (const { at, text } of spec.x.ticks) {
    texts.push({ ...underX, text, x: pixelAt(spec, at, width), y: below });
  }
  const middle = (frame.left + width - frame.right) / 2;
  texts.push({ ...underX, text: spec.x.title, x: middle, y: below + frame.text + 4 });
  if (spec.spans && spans) {
    const y = spans.top + spans.height / 2;
    const place = { x: frame.left - beside_px, y, align: 'end', base: 'middle' } as const;
    texts.push({ ...soft, ...place, text: spec.spans.label });
  }
  return texts;
}

/** The names of lines, points and rules, each at its mark; none for a mark that ends outside its panel. */
export function markTexts(spec: ChartSpec, width: number, height: number): ChartText[] {
  const { panels } = panelBoxes(spec, height);
  return spec.panels.flatMap((panel, i) => {
    const box = panels[i] ?? { top: 0, height: 0 };
    return panel.marks.flatMap((mark) => textOf(mark, spec, panel, box, width) ?? []);
  });
}

function textOf(
  mark: ChartMark,
  spec: ChartSpec,
  panel: ChartPanel,
  box: PanelBox,
  width: number,
): ChartText | null {
  if (mark.kind === 'band' || mark.label === '') return null;
  const word = { text: mark.label, ink: mark.ink };
  const isIn = (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high;
  if (mark.kind === 'rule') {
    if (!isIn(mark.at, mark.along === 'x' ? panel.y.range : spec.x.range)) return null;
    return mark.along === 'x'
      ? { ...word, x: frame.left, y: yIn(box, panel.y.range, mark.at) - 2, align: 'start', base: 'bottom' }
      : { ...word, x: pixelAt(spec, mark.at, width) - beside_px, y: box.top, align: 'end', base: 'top' };
  }
  const last = mark.y.findLastIndex((v, i) => v !== null && (mark.x[i] ?? 0) <= spec.x.range[1]);
  const x = mark.x[last];
  const y = mark.y[last];
  if (x === undefined || y == null || !isIn(x, spec.x.range) || !isIn(y, panel.y.range)) return null;
  const isAbove = mark.kind === 'points' || mark.labelSide === 'above';
  return {
    ...word,
    x: pixelAt(spec, x, width),
    y: yIn(box, panel.y.range, y) + (isAbove ? -beside_px : beside_px),
    align: 'end',
    base: isAbove ? 'bottom' : 'top',
  };
}

/** Where a grid line lies [px]: half a pixel puts a hairline on one row of pixels. */
export function gridRow(box: PanelBox, range: readonly [number, number], value: number): number {
  return Math.round(yIn(box, range, value)) + 0.5;
}

function yIn(box: PanelBox, [low, high]: readonly [number, number], value: number): number {
  return box.top + box.height * (1 - (value - low) / (high - low));
}
