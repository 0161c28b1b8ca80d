/** Even cells over a stretch of time; on each a spline of the third degree has four coefficients. */
export type Cells = {
  /** Start of the first [s]. */
  readonly first: number;
  /** Width of one [s]. */
  readonly width: number;
  readonly count: number;
};

/** The cell an instant lies in; before the first and after the last, that one. */
export function cellOf(cells: Cells, time: number): number {
  const k = Math.floor((time - cells.first) / cells.width);
  return k < 0 ? 0 : k < cells.count ? k : cells.count - 1;
}

/**
 * Weights of the four coefficients from the cell's number on, in the value at an instant, into `out`. Outside the
 * cells the nearest one's polynomial goes on.
 *
 * Source: de Boor, A Practical Guide to Splines, uniform cubic B-splines (from memory).
 * Check:  at the edge of a cell (1, 4, 1, 0) / 6.
 */
export function valueWeights(cells: Cells, cell: number, time: number, out: Float64Array): void {
  const u = (time - cells.first) / cells.width - cell;
  const r = 1 - u;
  out[0] = (r * r * r) / 6;
  out[1] = (u * u * (3 * u - 6) + 4) / 6;
  out[2] = (u * (3 + u * (3 - 3 * u)) + 1) / 6;
  out[3] = (u * u * u) / 6;
}

/** The same for the slope. */
export function slopeWeights(cells: Cells, cell: number, time: number, out: Float64Array): void {
  const u = (time - cells.first) / cells.width - cell;
  const r = 1 - u;
  const per = 1 / (2 * cells.width);
  out[0] = -r * r * per;
  out[1] = u * (3 * u - 4) * per;
  out[2] = (1 + u * (2 - 3 * u)) * per;
  out[3] = u * u * per;
}
