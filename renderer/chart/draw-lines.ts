import type { ChartLine, ChartSpec } from '../../core/handover/index.ts';
import type { ChartColours } from './chart-colours.ts';
import { frame, panelBoxes } from './chart-frame.ts';
import { axisTexts, gridRow } from './chart-texts.ts';
import { fillColumns, type PixelScale, pixelOf } from './dense-columns.ts';
import { type LineLevel, type LinePart, lineLevels, partIn } from './line-levels.ts';

export type DrawnLine = { readonly line: ChartLine; readonly levels: readonly LineLevel[] };

/** The lines of each panel with their levels: made once for a set of channels, not for every picture. */
export function drawnLines(panels: ChartSpec['panels']): readonly (readonly DrawnLine[])[] {
  return panels.map(({ marks }) =>
    marks.flatMap((line) => (line.kind === 'line' ? [{ line, levels: lineLevels(line.x, line.y) }] : [])),
  );
}

const dashes = { solid: [], dashed: [7, 4], dotted: [2, 4] } as const;

export type Plot = {
  readonly context: CanvasRenderingContext2D;
  readonly spec: ChartSpec;
  readonly lines: readonly (readonly DrawnLine[])[];
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** Pixels of the screen in one of CSS. */
  readonly scale: number;
  readonly colours: ChartColours;
};

/**
 * Panels of lines on a canvas, in the same frame and inks as the other plots. Those are drawn as SVG, which no
 * machine pans at the rate of its screen with many pulls in several panels.
 */
export function drawLines(plot: Plot): void {
  const { context, spec, lines, width, height, scale } = plot;
  const { canvas } = context;
  const across = width - frame.left - frame.right;
  const image = context.createImageData(canvas.width, canvas.height);
  const pixels = new Uint32Array(image.data.buffer);
  const boxes = panelBoxes(spec, height).panels;
  const [xLow, xHigh] = spec.x.range;
  const xFactor = across / (xHigh - xLow);
  const strokes: (() => void)[] = [];
  spec.panels.forEach(({ y: axis }, i) => {
    const { top, height: tall } = boxes[i] ?? { top: 0, height: 0 };
    const [low, high] = axis.range;
    const yFactor = -tall / (high - low);
    const inCss = {
      x: [frame.left - xLow * xFactor, xFactor],
      y: [top + tall - low * yFactor, yFactor],
    } as const;
    for (const { line, levels } of lines[i] ?? []) {
      const part = partIn(levels, spec.x.range, 2 * across);
      if (!part) continue;
      const dash = dashes[line.dash];
      const ink = plot.colours.ink(line.ink);
      if (part.to - part.from <= across / 2) {
        strokes.push(() => strokePart(plot, { part, line, dash, ink, scale: inCss, top, tall }));
        continue;
      }
      fillColumns(
        {
          pixels,
          stride: canvas.width,
          left: Math.round(frame.left * scale),
          right: Math.round((width - frame.right) * scale),
          top: Math.round(top * scale),
          bottom: Math.round((top + tall) * scale),
        },
        part,
        {
          x: [inCss.x[0] * scale, inCss.x[1] * scale],
          y: [inCss.y[0] * scale, inCss.y[1] * scale],
        },
        pixelOf(ink),
        dash.length === 0 ? null : dash,
      );
    }
  });
  // Pixels go in as they are, so they come first; the grid is then laid under them.
  context.putImageData(image, 0, 0);
  context.setTransform(scale, 0, 0, scale, 0, 0);
  for (const stroke of strokes) stroke();
  context.globalCompositeOperation = 'destination-over';
  drawAxes(plot);
  context.globalCompositeOperation = 'source-over';
}

type Stroke = {
  readonly part: LinePart;
  readonly line: ChartLine;
  readonly dash: readonly number[];
  readonly ink: string;
  readonly scale: PixelScale;
  readonly top: number;
  readonly tall: number;
};

function strokePart({ context, width }: Plot, { part, line, dash, ink, scale, top, tall }: Stroke): void {
  context.save();
  context.beginPath();
  context.rect(frame.left, top, width - frame.right - frame.left, tall);
  context.clip();
  context.strokeStyle = ink;
  context.lineWidth = line.weight === 'main' ? 2.5 : 1.25;
  context.setLineDash([...dash]);
  context.beginPath();
  let isDown = false;
  for (let i = part.from; i < part.to; i++) {
    const value = part.y[i] as number;
    if (!Number.isNaN(value)) {
      const x = scale.x[0] + scale.x[1] * (part.x[i] as number);
      const y = scale.y[0] + scale.y[1] * value;
      if (isDown) context.lineTo(x, y);
      else context.moveTo(x, y);
    }
    isDown = !Number.isNaN(value);
  }
  context.stroke();
  context.restore();
}

function drawAxes({ context, spec, width, height, colours }: Plot): void {
  const right = width - frame.right;
  context.setLineDash([]);
  context.lineWidth = 1;
  context.strokeStyle = colours.rule;
  const boxes = panelBoxes(spec, height).panels;
  context.beginPath();
  spec.panels.forEach(({ y: axis }, i) => {
    const box = boxes[i] ?? { top: 0, height: 0 };
    for (const tick of axis.ticks) {
      const at = gridRow(box, axis.range, tick.at);
      context.moveTo(frame.left, at);
      context.lineTo(right, at);
    }
  });
  context.stroke();
  context.font = `${frame.text}px ${colours.font}`;
  for (const { text, x, y, align, base, ink } of axisTexts(spec, width, height)) {
    context.fillStyle = colours.ink(ink);
    context.textAlign = align === 'middle' ? 'center' : align;
    context.textBaseline = base;
    context.fillText(text, x, y);
  }
}
