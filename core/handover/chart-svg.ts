import type { ChartBand, ChartInk, ChartLine, ChartMark, ChartPanel, ChartSpec } from './chart-spec.ts';
import { type Html, html } from './escape.ts';

type Frame = { readonly left: number; readonly top: number; readonly width: number; readonly height: number };

/** On grey paper before is light and dashed, after dark and solid. */
export const printInks: Readonly<Record<ChartInk, string>> = {
  before: '#4F7FB0',
  after: '#96330F',
  gain: '#1B6E60',
  loss: '#8A2E57',
  doubt: '#8A6A13',
  ink: '#1D2730',
  soft: '#5B6670',
  within: '#1B6E60',
};
const dashes = { solid: 'none', dashed: '7 4', dotted: '2 3' } as const;
const round = (v: number) => Math.round(v * 100) / 100;

function scale(range: readonly [number, number], from: number, to: number) {
  const span = range[1] - range[0] || 1;
  return (value: number) => from + ((value - range[0]) / span) * (to - from);
}

/** Runs without a gap, as path data; each gap lifts the pen. */
function path(
  xs: readonly number[],
  ys: readonly (number | null)[],
  x: (v: number) => number,
  y: (v: number) => number,
): string {
  let out = '';
  let isDown = false;
  for (const [i, value] of ys.entries()) {
    const at = xs[i];
    if (value === null || at === undefined) {
      isDown = false;
      continue;
    }
    out += `${isDown ? 'L' : 'M'}${round(x(at))} ${round(y(value))}`;
    isDown = true;
  }
  return out;
}

/** The outline of a band, one closed piece per run without a gap. */
function bandPath(band: ChartBand, x: (v: number) => number, y: (v: number) => number): string {
  let out = '';
  let start = 0;
  for (let i = 0; i <= band.x.length; i++) {
    const isGap = i === band.x.length || band.low[i] == null || band.high[i] == null;
    if (!isGap) continue;
    if (i - start > 1) {
      const there = path(band.x.slice(start, i), band.high.slice(start, i), x, y);
      const back = path(band.x.slice(start, i).reverse(), band.low.slice(start, i).reverse(), x, y);
      out += `${there}${back.replace('M', 'L')}Z`;
    }
    start = i + 1;
  }
  return out;
}

function lastPoint(line: ChartLine): { x: number; y: number } | null {
  for (let i = line.x.length - 1; i >= 0; i--) {
    const y = line.y[i];
    const x = line.x[i];
    if (y != null && x !== undefined) return { x, y };
  }
  return null;
}

function markSvg(mark: ChartMark, frame: Frame, x: (v: number) => number, y: (v: number) => number): Html {
  const colour = printInks[mark.ink];
  if (mark.kind === 'band') {
    return html`<path d="${bandPath(mark, x, y)}" fill="${colour}" fill-opacity="0.2" stroke="${colour}" stroke-opacity="0.45" stroke-width="0.5"/>`;
  }
  if (mark.kind === 'points') {
    return html`${mark.x.map((at, i) => {
      const value = mark.y[i];
      return value == null
        ? null
        : html`<circle cx="${round(x(at))}" cy="${round(y(value))}" r="3" fill="${colour}"/>`;
    })}`;
  }
  if (mark.kind === 'rule') {
    const ends =
      mark.along === 'x'
        ? { x1: frame.left, x2: frame.left + frame.width, y1: round(y(mark.at)), y2: round(y(mark.at)) }
        : { x1: round(x(mark.at)), x2: round(x(mark.at)), y1: frame.top, y2: frame.top + frame.height };
    return html`<line x1="${ends.x1}" x2="${ends.x2}" y1="${ends.y1}" y2="${ends.y2}" stroke="${colour}" stroke-width="1" stroke-dasharray="${dashes[mark.dash]}"/>`;
  }
  const width = mark.weight === 'thin' ? 0.8 : mark.dash === 'solid' ? 2.6 : 2;
  return html`<path d="${path(mark.x, mark.y, x, y)}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-dasharray="${dashes[mark.dash]}" stroke-linejoin="round"/>`;
}

/** Labels stand right of their lines' ends; two that would touch are moved apart, the upper one up. */
function labelsSvg(panel: ChartPanel, x: (v: number) => number, y: (v: number) => number): Html {
  const labels = panel.marks
    .flatMap((mark) => {
      if (mark.kind !== 'line' || mark.label === '') return [];
      const end = lastPoint(mark);
      return end ? [{ text: mark.label, ink: mark.ink, x: x(end.x) + 8, y: y(end.y) + 4 }] : [];
    })
    .sort((a, b) => a.y - b.y);
  for (let i = 1; i < labels.length; i++) {
    const [above, below] = [labels[i - 1], labels[i]];
    if (!above || !below) continue;
    const missing = labelHeight - (below.y - above.y);
    if (missing <= 0) continue;
    above.y -= missing / 2;
    below.y += missing / 2;
  }
  return html`${labels.map((l) => html`<text x="${round(l.x)}" y="${round(l.y)}" class="label ink-${l.ink}">${l.text}</text>`)}`;
}

const labelHeight = 14;
/** Room for a label right of the plot, a letter of the print font is about this wide. */
const letterWidth = 6.6;

function panelSvg(panel: ChartPanel, frame: Frame, spec: ChartSpec, clipId: string): Html {
  const x = scale(spec.x.range, frame.left, frame.left + frame.width);
  const y = scale(panel.y.range, frame.top + frame.height, frame.top);
  return html`<g><text x="${frame.left}" y="${frame.top - 9}" class="axis">${panel.y.title}</text>${panel.y.ticks.map(
    (tick) =>
      html`<line x1="${frame.left}" x2="${frame.left + frame.width}" y1="${round(y(tick.at))}" y2="${round(y(tick.at))}" class="grid"/><text x="${frame.left - 8}" y="${round(y(tick.at) + 4)}" text-anchor="end" class="tick">${tick.text}</text>`,
  )}<clipPath id="${clipId}"><rect x="${frame.left}" y="${frame.top}" width="${frame.width}" height="${frame.height}"/></clipPath><g clip-path="url(#${clipId})">${panel.marks.map((m) => markSvg(m, frame, x, y))}</g>${labelsSvg(panel, x, y)}</g>`;
}

/**
 * A chart as one SVG element for print: vector lines, no script, no outside reference; inks differ by dash as
 * well as hue, so a grey printer still tells them apart.
 *
 * @param spec   the same description that the screen draws
 * @param id     unique on the page, prefix of the ids inside
 */
export function chartSvg(spec: ChartSpec, id: string, size = { width: 720, height: 420 }): Html {
  const left = 56;
  const longest = Math.max(
    0,
    ...spec.panels.flatMap((p) => p.marks.map((m) => (m.kind === 'line' ? m.label.length : 0))),
  );
  const right = longest === 0 ? 14 : Math.round(longest * letterWidth) + 6;
  const gap = 34;
  // The bar of spans lies between the ticks and the title of the axis.
  const foot = spec.spans ? 58 : 44;
  const width = size.width - left - right;
  const heights = size.height - foot - gap * spec.panels.length;
  let top = 0;
  const panels = spec.panels.map((panel, i) => {
    top += gap;
    const frame: Frame = { left, top, width, height: Math.round(heights * panel.share) };
    top += frame.height;
    return panelSvg(panel, frame, spec, `${id}-${i}`);
  });
  const x = scale(spec.x.range, left, left + width);
  const spans = spec.spans;
  return html`<svg viewBox="0 0 ${size.width} ${size.height}" role="img" aria-label="${spec.description}" class="chart">${panels}${spec.x.ticks.map(
    (t) =>
      html`<text x="${round(x(t.at))}" y="${top + 18}" text-anchor="middle" class="tick">${t.text}</text>`,
  )}<text x="${left + width}" y="${top + (spans ? 50 : 36)}" text-anchor="end" class="axis">${spec.x.title}</text>${
    spans &&
    html`<text x="${left - 8}" y="${top + 33}" text-anchor="end" class="tick">${spans.label}</text>${spans.parts.map(
      (s) =>
        html`<rect x="${round(x(s.from))}" y="${top + 26}" width="${round(Math.max(1, x(s.to) - x(s.from)))}" height="5" fill="${printInks[s.ink]}"/>`,
    )}`
  }</svg>`;
}
