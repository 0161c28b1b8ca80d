import { useEffect, useRef, useState } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import { otherWork } from '../hooks/other-work.ts';
import styles from './Chart.module.css';
import { ChartTexts } from './ChartTexts.tsx';
import { chartColours } from './chart-colours.ts';
import { drawFigure, purgeFigure } from './draw-figure.ts';
import { loadPlotly } from './load-plotly.ts';
import { plotlyFigure } from './plotly-figure.ts';
import { useThemeName } from './use-theme-name.ts';

export type PlotlyPlotProps = { readonly spec: ChartSpec; readonly width: number; readonly height: number };

/** The drawing itself. Plotly is fetched when the first plot is shown and not before. */
export function PlotlyPlot({ spec, width, height }: PlotlyPlotProps) {
  const plot = useRef<HTMLDivElement>(null);
  const theme = useThemeName();
  // The words change with the curves that they stand at.
  const [drawn, setDrawn] = useState<PlotlyPlotProps | null>(null);

  // One drawing after the other: plotly places its labels after a pause, and a second drawing takes them away.
  // Each in a task of its own, or the key that asked for it would wait for the curves.
  const drawing = useRef<Promise<unknown>>(Promise.resolve());

  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme decides the tokens that are read here
  useEffect(() => {
    const root = plot.current;
    if (!root) return;
    let isCurrent = true;
    const before = drawing.current.catch(() => {});
    drawing.current = Promise.all([loadPlotly(), before, otherWork()]).then(async () => {
      if (!isCurrent) return;
      const figure = plotlyFigure(spec, chartColours(root), width, height);
      await drawFigure(root, figure, () => isCurrent);
      if (isCurrent) setDrawn({ spec, width, height });
    });
    return () => {
      isCurrent = false;
    };
  }, [spec, width, height, theme]);

  useEffect(() => {
    const root = plot.current;
    return () => {
      const purged = () => root && purgeFigure(root);
      void drawing.current.then(purged, purged);
    };
  }, []);

  return (
    <>
      <div ref={plot} className={styles.plot} role="img" aria-label={spec.description} />
      {drawn && <ChartTexts {...drawn} />}
    </>
  );
}
