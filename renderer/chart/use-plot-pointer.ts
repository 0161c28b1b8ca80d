import { type RefObject, useEffect, useRef } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import { nearestX, xAt } from './chart-frame.ts';

export type PlotPointer = {
  readonly onCursor: ((x: number | null) => void) | undefined;
  /** While a range is drawn, and null when it is let go or left. */
  readonly onDraw: (range: [number, number] | null) => void;
  readonly onZoom: ((range: [number, number]) => void) | undefined;
};

/** Reads the pointer over a plot as values of its x axis: where it stands, and the range drawn with it. */
export function usePlotPointer(
  ref: RefObject<HTMLElement | null>,
  spec: ChartSpec,
  width: number | null,
  pointer: PlotPointer,
): void {
  // What is drawn must outlive a change of the plot under it.
  const start = useRef<number | null>(null);
  const latest = useRef(pointer);
  useEffect(() => {
    latest.current = pointer;
  });
  useEffect(() => {
    const element = ref.current;
    if (!element || width === null) return;
    const at = (event: globalThis.PointerEvent) =>
      xAt(spec, event.clientX - element.getBoundingClientRect().left, width);
    const range = (event: globalThis.PointerEvent): [number, number] | null => {
      const from = start.current;
      if (from === null) return null;
      const to = nearestX(spec, event.clientX - element.getBoundingClientRect().left, width);
      return from < to ? [from, to] : [to, from];
    };
    const stop = () => {
      start.current = null;
      latest.current.onDraw(null);
    };
    const onDown = (event: globalThis.PointerEvent) => {
      // Held shift moves the window where there is one.
      const isDrawing = latest.current.onZoom && event.button === 0 && !event.shiftKey;
      start.current = isDrawing ? at(event) : null;
      // What is drawn goes on past the edge of the plot, up to its end.
      if (start.current !== null) element.setPointerCapture(event.pointerId);
    };
    const onMove = (event: globalThis.PointerEvent) => {
      latest.current.onCursor?.(at(event));
      if (start.current !== null) latest.current.onDraw(range(event));
    };
    const onUp = (event: globalThis.PointerEvent) => {
      const drawn = range(event);
      stop();
      const [low, high] = spec.x.range;
      // A click that trembles is no range.
      if (drawn && drawn[1] - drawn[0] > (high - low) * 0.02) latest.current.onZoom?.(drawn);
    };
    const onLeave = () => {
      stop();
      latest.current.onCursor?.(null);
    };
    element.addEventListener('pointerdown', onDown);
    element.addEventListener('pointermove', onMove);
    element.addEventListener('pointerup', onUp);
    element.addEventListener('pointercancel', stop);
    element.addEventListener('pointerleave', onLeave);
    return () => {
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('pointerup', onUp);
      element.removeEventListener('pointercancel', stop);
      element.removeEventListener('pointerleave', onLeave);
    };
  }, [ref, spec, width]);
}
