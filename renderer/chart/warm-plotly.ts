import type { ChartAxis, ChartSpec } from '../../core/handover/index.ts';
import { chartColours } from './chart-colours.ts';
import { drawFigure, purgeFigure } from './draw-figure.ts';
import { isPlotlyAskedFor } from './load-plotly.ts';
import { plotlyFigure } from './plotly-figure.ts';

const size_px = 300;

const axis: ChartAxis = {
  title: '0',
  range: [0, 1],
  ticks: [0, 0.5, 1].map((at) => ({ at, text: `${at}` })),
};

const ends = { x: [0, 1], y: [0, 1], label: '0' };

const looks = { ink: 'after', dash: 'solid', labelSide: 'above' } as const;

/** One of each mark that a plot of pulls is made of. */
const small: ChartSpec = {
  description: '',
  x: axis,
  panels: [
    {
      id: '',
      share: 1,
      y: axis,
      marks: [
        { kind: 'band', ink: 'after', x: ends.x, low: ends.y, high: ends.y },
        { kind: 'line', weight: 'main', ...looks, ...ends },
        { kind: 'line', weight: 'thin', ...looks, ...ends, label: '' },
      ],
    },
  ],
  spans: null,
};

/**
 * Starts plotly and draws a small plot that nobody sees, once files are about to come: the system's dialog is being
 * opened or they are dragged over the window, and nothing else is waited for. Else the first curves of a log that was
 * just read would hold the screen for a fifth of a second.
 */
export function warmPlotlyWhenFilesCome(page: Document): void {
  const isFileDialog = (event: Event) =>
    event.target instanceof HTMLInputElement && event.target.type === 'file';
  const whenIdle = () => requestIdleCallback(() => void warmPlotly());
  page.addEventListener('click', (event) => isFileDialog(event) && whenIdle(), true);
  page.addEventListener('dragenter', whenIdle, true);
}

async function warmPlotly(): Promise<void> {
  if (isPlotlyAskedFor()) return;
  const root = document.createElement('div');
  root.ariaHidden = 'true';
  root.style.cssText = `position: fixed; left: -${2 * size_px}px; top: 0; visibility: hidden`;
  document.body.append(root);
  try {
    await drawFigure(root, plotlyFigure(small, chartColours(root), size_px, size_px), () => true);
    await purgeFigure(root);
  } catch {
    // The plot that needs it tells what is wrong.
  } finally {
    root.remove();
  }
}
