import type { Plotly } from 'plotly.js-dist-min';

/** Plotly, fetched when it is first asked for and not before. */
export async function loadPlotly(): Promise<Plotly> {
  const { default: plotly } = await import('plotly.js-dist-min');
  return typeof plotly === 'function' ? plotly() : plotly;
}
