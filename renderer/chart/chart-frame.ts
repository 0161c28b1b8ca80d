import type { ChartSpec } from '../../core/handover/index.ts';

/** Pixels around the plot area and between its panels; fixed, so that handles and cursor find their place. */
export const frame = { left: 56, right: 16, top: 30, bottom: 46, gap: 34, spans: 26, text: 14.5 } as const;

export type PanelBox = { readonly top: number; readonly height: number };

/** Where each panel stands in a plot of this height [px], and the strip of spans under the last. */
export function panelBoxes(spec: ChartSpec, height: number): { panels: PanelBox[]; spans: PanelBox | null } {
  const strip = spec.spans ? frame.spans : 0;
  const free = height - frame.top - frame.bottom - strip - frame.gap * (spec.panels.length - 1);
  let top: number = frame.top;
  const panels = spec.panels.map((panel) => {
    const box = { top, height: Math.max(20, free * panel.share) };
    top += box.height + frame.gap;
    return box;
  });
  return { panels, spans: spec.spans ? { top: top - frame.gap + 8, height: strip - 12 } : null };
}

/** x in the axis' unit at this pixel, null outside the plot area. */
export function xAt(spec: ChartSpec, pixel: number, width: number): number | null {
  return pixel < frame.left || pixel > width - frame.right ? null : nearestX(spec, pixel, width);
}

/** x in the axis' unit at this pixel; beside the plot area that of its nearer end. */
export function nearestX(spec: ChartSpec, pixel: number, width: number): number {
  const share = (pixel - frame.left) / (width - frame.left - frame.right);
  const [from, to] = spec.x.range;
  return from + Math.min(1, Math.max(0, share)) * (to - from);
}

export function pixelAt(spec: ChartSpec, x: number, width: number): number {
  const [from, to] = spec.x.range;
  return frame.left + ((x - from) / (to - from)) * (width - frame.left - frame.right);
}
