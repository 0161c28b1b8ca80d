import type { ChartMark, ChartSpec } from '../../core/handover/index.ts';
import type { ChartColours } from './chart-colours.ts';
import { frame, panelBoxes } from './chart-frame.ts';
import { isThin, type ThinPath, thinPaths } from './thin-paths.ts';

const dashes = { solid: 'solid', dashed: '7px,4px', dotted: '2px,4px' } as const;

/** How far a thin line may be off before it shows: a quarter of its width. Our own choice. */
const unseen_px = 0.25;

type Axes = { readonly x: string; readonly y: string };

function traces(mark: ChartMark, axes: Axes, colours: ChartColours): object[] {
  const on = { xaxis: axes.x, yaxis: axes.y, hoverinfo: 'skip', type: 'scatter' };
  switch (mark.kind) {
    case 'line': {
      const line = { color: colours.ink(mark.ink), width: 2.5, dash: dashes[mark.dash] };
      return [{ ...on, mode: 'lines', x: mark.x, y: mark.y, line }];
    }
    case 'band': {
      const edge = { ...on, mode: 'lines', x: mark.x, line: { width: 0 } };
      return [
        { ...edge, y: mark.low },
        { ...edge, y: mark.high, fill: 'tonexty', fillcolor: colours.wash(mark.ink) },
      ];
    }
    case 'points':
      return [
        { ...on, mode: 'markers', x: mark.x, y: mark.y, marker: { color: colours.ink(mark.ink), size: 8 } },
      ];
    case 'rule':
      return [];
  }
}

/** A trace would draw each stretch by itself, a shape draws all at once. Behind what is drawn as a trace. */
function thinShape(thin: ThinPath, axes: Axes, colours: ChartColours): object {
  return {
    type: 'path',
    path: thin.path,
    xref: axes.x,
    yref: axes.y,
    layer: 'between',
    fillcolor: 'rgba(0,0,0,0)',
    line: { color: `${colours.ink(thin.ink)}90`, width: 1, dash: dashes[thin.dash] },
  };
}

function ruleShape(mark: ChartMark, axes: Axes, colours: ChartColours): object[] {
  if (mark.kind !== 'rule') return [];
  const line = { color: colours.ink(mark.ink), width: 1.25, dash: dashes[mark.dash] };
  return mark.along === 'x'
    ? [
        {
          type: 'line',
          xref: `${axes.x} domain`,
          yref: axes.y,
          x0: 0,
          x1: 1,
          y0: mark.at,
          y1: mark.at,
          line,
          layer: 'below',
        },
      ]
    : [
        {
          type: 'line',
          xref: axes.x,
          yref: `${axes.y} domain`,
          x0: mark.at,
          x1: mark.at,
          y0: 0,
          y1: 1,
          line,
          layer: 'below',
        },
      ];
}

/** The plot for plotly: data, layout and how it behaves. Its words are `ChartTexts`. */
export function plotlyFigure(spec: ChartSpec, colours: ChartColours, width: number, height: number) {
  const boxes = panelBoxes(spec, height);
  const inner = height - frame.top - frame.bottom;
  const domain = (box: { top: number; height: number }): [number, number] => {
    const low = 1 - (box.top - frame.top + box.height) / inner;
    return [Math.max(0, low), Math.min(1, 1 - (box.top - frame.top) / inner)];
  };
  const data: object[] = [];
  const shapes: object[] = [];
  const layout: Record<string, unknown> = {
    width,
    height,
    margin: { l: frame.left, r: frame.right, t: frame.top, b: frame.bottom },
    paper_bgcolor: 'rgba(0,0,0,0)',
    plot_bgcolor: 'rgba(0,0,0,0)',
    showlegend: false,
    hovermode: false,
    shapes,
    xaxis: { range: spec.x.range, visible: false },
  };
  spec.panels.forEach((panel, i) => {
    const axes = { x: 'x', y: i === 0 ? 'y' : `y${i + 1}` };
    const span = domain(boxes.panels[i] ?? { top: 0, height: 0 });
    layout[i === 0 ? 'yaxis' : `yaxis${i + 1}`] = {
      domain: span,
      range: panel.y.range,
      tickvals: panel.y.ticks.map((t) => t.at),
      showticklabels: false,
      gridcolor: colours.rule,
      zeroline: false,
      fixedrange: true,
    };
    const perPixel = (panel.y.range[1] - panel.y.range[0]) / (inner * (span[1] - span[0]));
    for (const thin of thinPaths(panel.marks, unseen_px * perPixel))
      shapes.push(thinShape(thin, axes, colours));
    for (const mark of panel.marks) {
      if (isThin(mark)) continue;
      data.push(...traces(mark, axes, colours));
      shapes.push(...ruleShape(mark, axes, colours));
    }
  });
  if (spec.spans && boxes.spans) addSpans(spec, domain(boxes.spans), colours, shapes);
  return { data, layout, config: { staticPlot: true } };
}

function addSpans(spec: ChartSpec, [low, high]: [number, number], colours: ChartColours, shapes: object[]) {
  if (!spec.spans) return;
  const middle = (low + high) / 2;
  const clip = (x: number) => Math.min(spec.x.range[1], Math.max(spec.x.range[0], x));
  const bar = { type: 'line', xref: 'x', yref: 'paper', y0: middle, y1: middle };
  shapes.push({ ...bar, xref: 'paper', x0: 0, x1: 1, line: { color: colours.rule, width: 1 } });
  for (const part of spec.spans.parts) {
    if (clip(part.from) >= clip(part.to)) continue;
    shapes.push({
      ...bar,
      x0: clip(part.from),
      x1: clip(part.to),
      line: { color: colours.ink(part.ink), width: 6 },
    });
  }
}
