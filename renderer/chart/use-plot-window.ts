import { type RefObject, useEffect, useRef } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import { xAt } from './chart-frame.ts';
import { type PlotWindow, panned, zoomed } from './plot-window.ts';

/**
 * Moves the window of a plot by pointer: held shift and drag, or a wheel sideways, pan; control and wheel, or two
 * fingers, zoom about the pointer; a double click shows all. The wheel alone keeps scrolling the page.
 */
export function usePlotWindow(
  ref: RefObject<HTMLElement | null>,
  spec: ChartSpec,
  whole: PlotWindow,
  width: number | null,
  onWindow: (window: PlotWindow | null) => void,
): void {
  const latest = useRef({ spec, whole, onWindow });
  const held = useRef<number | null>(null);
  useEffect(() => {
    latest.current = { spec, whole, onWindow };
  });
  useEffect(() => {
    const element = ref.current;
    if (!element || width === null) return;
    const share = (pixels: number) => pixels / element.clientWidth;
    const onWheel = (event: WheelEvent) => {
      const { spec, whole, onWindow } = latest.current;
      const sideways = event.shiftKey && event.deltaX === 0 ? event.deltaY : event.deltaX;
      if (event.ctrlKey || event.metaKey) {
        const about = xAt(spec, event.clientX - element.getBoundingClientRect().left, width);
        onWindow(zoomed(spec.x.range, whole, 1.0015 ** event.deltaY, about ?? spec.x.range[0]));
      } else if (sideways !== 0 && Math.abs(sideways) >= Math.abs(event.deltaY)) {
        onWindow(panned(spec.x.range, whole, share(sideways)));
      } else return;
      event.preventDefault();
    };
    const onDown = (event: globalThis.PointerEvent) => {
      held.current = event.shiftKey && event.button === 0 ? event.clientX : null;
      if (held.current !== null) event.preventDefault();
    };
    const onMove = (event: globalThis.PointerEvent) => {
      if (held.current === null || event.clientX === held.current) return;
      const { spec, whole, onWindow } = latest.current;
      onWindow(panned(spec.x.range, whole, share(held.current - event.clientX)));
      held.current = event.clientX;
    };
    const onUp = () => {
      held.current = null;
    };
    const onDouble = () => latest.current.onWindow(null);
    element.addEventListener('wheel', onWheel, { passive: false });
    element.addEventListener('pointerdown', onDown);
    element.addEventListener('pointermove', onMove);
    element.addEventListener('dblclick', onDouble);
    window.addEventListener('pointerup', onUp);
    return () => {
      element.removeEventListener('wheel', onWheel);
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('dblclick', onDouble);
      window.removeEventListener('pointerup', onUp);
    };
  }, [ref, width]);
}
