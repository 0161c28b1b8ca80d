import type { Plotly } from 'plotly.js-dist-min';
import { otherWork } from '../hooks/other-work.ts';

let loading: Promise<Plotly> | null = null;

/** Whether anything has asked for it so far. */
export const isPlotlyAskedFor = (): boolean => loading !== null;

/** Plotly, fetched when it is first asked for and not before. */
export function loadPlotly(): Promise<Plotly> {
  loading ??= startPlotly().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}

/** Parsing, starting and the first drawing take some tenths of a second each: keys get their turn between them. */
async function startPlotly(): Promise<Plotly> {
  const { default: plotly } = await import('plotly.js-dist-min');
  await otherWork();
  const started = typeof plotly === 'function' ? plotly() : plotly;
  await otherWork();
  return started;
}
