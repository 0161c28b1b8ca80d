import { type RefObject, useEffect, useRef } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import { xAt } from './chart-frame.ts';

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
    const range = (to: number | null): [number, number] | null => {
      const from = start.current;
      if (from === null || to === null) return null;
      return from < to ? [from, to] : [to, from];
    };
    const onDown = (event: globalThis.PointerEvent) => {
      // Held shift moves the window where there is one.
      const isDrawing = latest.current.onZoom && event.button === 0 && !event.shiftKey;
      start.current = isDrawing ? at(event) : null;
    };
    const onMove = (event: globalThis.PointerEvent) => {
      const x = at(event);
      latest.current.onCursor?.(x);
      if (start.current !== null) latest.current.onDraw(range(x));
    };
    const onUp = (event: globalThis.PointerEvent) => {
      const drawn = range(at(event));
      start.current = null;
      latest.current.onDraw(null);
      const [low, high] = spec.x.range;
      // A click that trembles is no range.
      if (drawn && drawn[1] - drawn[0] > (high - low) * 0.02) latest.current.onZoom?.(drawn);
    };
    const onLeave = () => {
      start.current = null;
      latest.current.onDraw(null);
      latest.current.onCursor?.(null);
    };
    element.addEventListener('pointerdown', onDown);
    element.addEventListener('pointermove', onMove);
    element.addEventListener('pointerup', onUp);
    element.addEventListener('pointerleave', onLeave);
    return () => {
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('pointerup', onUp);
      element.removeEventListener('pointerleave', onLeave);
    };
  }, [ref, spec, width]);
}
