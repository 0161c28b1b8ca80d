import type { PullEvidence } from '../evidence/pull-evidence.ts';

/** Evenly spaced engine speeds, both ends included. */
export type Grid = { readonly engineSpeed_rad_s: Float64Array; readonly band: readonly [number, number] };

/** Spacing of about 50 rpm: several points inside the smoothing of any power curve. */
const wantedStep = (50 * Math.PI) / 30;

export function gridOver(band: readonly [number, number]): Grid {
  const [low, high] = band;
  const steps = Math.max(24, Math.min(160, Math.round((high - low) / wantedStep)));
  const engineSpeed_rad_s = new Float64Array(steps + 1);
  for (let k = 0; k <= steps; k++) engineSpeed_rad_s[k] = low + ((high - low) * k) / steps;
  return { engineSpeed_rad_s, band };
}

/**
 * A curve of a pull, read on a grid by straight lines; NaN where either neighbour is or outside the pull.
 *
 * @param x,y  one length, x rising strictly
 */
export function onGrid(x: Float64Array, y: Float64Array, grid: Grid): Float64Array {
  const at = grid.engineSpeed_rad_s;
  const out = new Float64Array(at.length).fill(Number.NaN);
  let i = 0;
  const last = x.length - 1;
  for (let k = 0; k < at.length; k++) {
    const want = at[k] as number;
    while (i < last && (x[i + 1] as number) < want) i++;
    const x0 = x[i] as number;
    if (want === x0) out[k] = y[i] as number;
    else if (i < last && want > x0) {
      const share = (want - x0) / ((x[i + 1] as number) - x0);
      // At a whole share the far neighbour alone counts, so that a gap beside it does no harm.
      out[k] =
        share === 1 ? (y[i + 1] as number) : (y[i] as number) * (1 - share) + (y[i + 1] as number) * share;
    }
  }
  return out;
}

/** Mean over the grid, ends at half weight; NaN with a gap in it. */
export function gridMean(y: Float64Array): number {
  const n = y.length;
  let sum = ((y[0] as number) + (y[n - 1] as number)) / 2;
  for (let k = 1; k < n - 1; k++) sum += y[k] as number;
  return sum / (n - 1);
}

/** Mean of the finite points from index `from` up to not `to`; NaN where under 60 % of them are finite. */
export function finiteMean(y: Float64Array, from = 0, to = y.length): number {
  let sum = 0;
  let count = 0;
  for (let k = from; k < to; k++) {
    const value = y[k] as number;
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count >= 0.6 * (to - from) && count > 0 ? sum / count : Number.NaN;
}

/** Wheel power of a pull on the grid [W]. */
export function powerOnGrid(pull: PullEvidence, grid: Grid): Float64Array {
  return onGrid(pull.power.engineSpeed_rad_s, pull.power.wheelPower, grid);
}
