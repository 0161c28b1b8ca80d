import { memo } from 'react';
import type { ChartSpec } from '../../core/handover/index.ts';
import styles from './Chart.module.css';
import { axisTexts, type ChartText, markTexts } from './chart-texts.ts';

const baselines = { top: 'text-before-edge', middle: 'central', bottom: 'text-after-edge' } as const;

export type ChartTextsProps = { readonly spec: ChartSpec; readonly width: number; readonly height: number };

/**
 * The words of a plot over its curves. Plotly would lay out the page for each of them, which takes longer than
 * drawing the curves. For the eye alone: the plot says itself what it shows.
 */
export const ChartTexts = memo(function ChartTexts({ spec, width, height }: ChartTextsProps) {
  const word = ({ text, x, y, align, base, ink }: ChartText, key: string, className?: string) => (
    <text
      key={key}
      className={className}
      x={x}
      y={y}
      textAnchor={align}
      dominantBaseline={baselines[base]}
      style={{ fill: `var(--${ink})` }}
    >
      {text}
    </text>
  );
  return (
    <svg className={styles.texts} width={width} height={height} aria-hidden="true">
      {axisTexts(spec, width, height).map((text, i) => word(text, `axis ${i}`))}
      {markTexts(spec, width, height).map((text, i) => word(text, `mark ${i}`, styles.named))}
    </svg>
  );
});
