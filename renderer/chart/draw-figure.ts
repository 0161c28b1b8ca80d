import type { Figure } from 'plotly.js-dist-min';
import { otherWork } from '../hooks/other-work.ts';
import { loadPlotly } from './load-plotly.ts';

/**
 * Draws the figure, or draws it anew. A first drawing takes twice as long as a later one and comes in two pieces, the
 * axes and what stands in them, with a turn for keys between.
 *
 * @param isWanted asked between the pieces: the plot may have gone, or another figure have taken its place
 */
export async function drawFigure(root: HTMLElement, figure: Figure, isWanted: () => boolean): Promise<void> {
  const plotly = await loadPlotly();
  const { data, layout, config } = figure;
  if (!isWanted()) return;
  if (!root.hasChildNodes()) {
    await plotly.react(root, [], { ...layout, shapes: [] }, config);
    await otherWork();
    if (!isWanted()) return;
  }
  await plotly.react(root, data, layout, config);
}

export async function purgeFigure(root: HTMLElement): Promise<void> {
  if (!root.hasChildNodes()) return;
  const plotly = await loadPlotly();
  plotly.purge(root);
}
