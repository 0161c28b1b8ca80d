import { useRef, useState } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import styles from './Chart.module.css';
import { frame, pixelAt } from './chart-frame.ts';
import { LinesPlot } from './LinesPlot.tsx';
import { type PlotWindow, windowByKey } from './plot-window.ts';
import { usePlotPointer } from './use-plot-pointer.ts';
import { usePlotWindow } from './use-plot-window.ts';
import { useSize } from './use-size.ts';

export type LinesChartProps = {
  /** Its x axis is the window that is shown; its panels hold all there is. */
  readonly spec: ChartSpec;
  readonly whole: PlotWindow;
  readonly cursor: number | null;
  readonly cursorText: string;
  readonly onCursor: (x: number | null) => void;
  /** Null shows all. */
  readonly onWindow: (window: PlotWindow | null) => void;
};

/** Lines to explore: one reading line and one window for all panels, by pointer and by keys. */
export function LinesChart({ spec, whole, cursor, cursorText, onCursor, onWindow }: LinesChartProps) {
  const box = useRef<HTMLElement>(null);
  const [drawn, setDrawn] = useState<[number, number] | null>(null);
  const size = useSize(box);
  const width = size?.width ?? null;
  usePlotPointer(box, spec, width, { onCursor, onDraw: setDrawn, onZoom: onWindow });
  usePlotWindow(box, spec, whole, width, onWindow);
  const [low, high] = spec.x.range;
  const x = (value: number) => (size ? pixelAt(spec, value, size.width) : 0);
  return (
    <figure ref={box} className={styles.chart}>
      {size && <LinesPlot spec={spec} width={size.width} height={size.height} />}
      <input
        type="range"
        className={styles.keys}
        aria-label={`${spec.x.title}: ${spec.description}`}
        aria-valuetext={cursorText}
        aria-keyshortcuts="+ - 0 Shift+ArrowLeft Shift+ArrowRight"
        min={low}
        max={high}
        step={(high - low) / 200}
        value={cursor ?? (low + high) / 2}
        onChange={(event) => onCursor(Number(event.target.value))}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const next = windowByKey(event, spec.x.range, whole, cursor);
          if (next === undefined) return;
          event.preventDefault();
          event.stopPropagation();
          onWindow(next);
        }}
      />
      {drawn && (
        <div className={styles.selection} style={{ left: x(drawn[0]), width: x(drawn[1]) - x(drawn[0]) }} />
      )}
      {cursor !== null && cursor >= low && cursor <= high && size && (
        <div className={styles.cursor} style={{ left: x(cursor), top: frame.top, bottom: frame.bottom }} />
      )}
    </figure>
  );
}
