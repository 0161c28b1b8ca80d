import { type ReactNode, useRef, useState } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import styles from './Chart.module.css';
import { frame, pixelAt } from './chart-frame.ts';
import { PlotlyPlot } from './PlotlyPlot.tsx';
import { usePlotPointer } from './use-plot-pointer.ts';
import { useSize } from './use-size.ts';

export type ChartProps = {
  readonly spec: ChartSpec;
  /** Where the reading line stands, in the axis' unit; null for none. */
  readonly cursor?: number | null;
  readonly onCursor?: (x: number | null) => void;
  /** What the reading line reads, for a screen reader. */
  readonly cursorText?: string;
  /** A range was drawn with the pointer. */
  readonly onZoom?: (range: [number, number]) => void;
  /** Laid over the plot with its size, for handles. */
  readonly overlay?: (size: { width: number; height: number }) => ReactNode;
};

/** A spec on the screen, with a reading line that pointer and arrow keys move. */
export function Chart({ spec, cursor = null, onCursor, cursorText, onZoom, overlay }: ChartProps) {
  const box = useRef<HTMLElement>(null);
  const [drawn, setDrawn] = useState<[number, number] | null>(null);
  const size = useSize(box);
  usePlotPointer(box, spec, size?.width ?? null, { onCursor, onDraw: setDrawn, onZoom });

  const [low, high] = spec.x.range;
  const x = (value: number) => (size ? pixelAt(spec, value, size.width) : 0);
  return (
    <figure ref={box} className={styles.chart}>
      {size && <PlotlyPlot spec={spec} width={size.width} height={size.height} />}
      {onCursor && (
        <input
          type="range"
          className={styles.keys}
          aria-label={`${spec.x.title}: ${spec.description}`}
          aria-valuetext={cursorText}
          min={low}
          max={high}
          step={(high - low) / 200}
          value={cursor ?? (low + high) / 2}
          onChange={(event) => onCursor(Number(event.target.value))}
        />
      )}
      {drawn && (
        <div className={styles.selection} style={{ left: x(drawn[0]), width: x(drawn[1]) - x(drawn[0]) }} />
      )}
      {cursor !== null && size && (
        <div className={styles.cursor} style={{ left: x(cursor), top: frame.top, bottom: frame.bottom }} />
      )}
      {overlay && size && overlay(size)}
    </figure>
  );
}
