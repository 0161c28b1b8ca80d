import { useEffect, useMemo, useRef } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import styles from './Chart.module.css';
import { chartColours } from './chart-colours.ts';
import { drawLines, drawnLines } from './draw-lines.ts';
import { useThemeName } from './use-theme-name.ts';

export type LinesPlotProps = { readonly spec: ChartSpec; readonly width: number; readonly height: number };

/** Panels of lines that follow a moving window of x at the rate of the screen. */
export function LinesPlot({ spec, width, height }: LinesPlotProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const theme = useThemeName();
  const { panels } = spec;
  const lines = useMemo(() => drawnLines(panels), [panels]);
  const scale = window.devicePixelRatio || 1;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme decides the tokens that are read here
  useEffect(() => {
    const element = canvas.current;
    // Kept in main memory, since its pixels are written there.
    const context = element?.getContext('2d', { willReadFrequently: true });
    if (!element || !context) return;
    drawLines({ context, spec, lines, width, height, scale, colours: chartColours(element) });
  }, [spec, lines, width, height, scale, theme]);

  return (
    <canvas
      ref={canvas}
      width={Math.round(width * scale)}
      height={Math.round(height * scale)}
      className={styles.lines}
      role="img"
      aria-label={spec.description}
    />
  );
}
