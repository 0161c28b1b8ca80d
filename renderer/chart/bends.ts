/**
 * The places in a curve that the eye needs: whatever is left out lies, in y, no further than `within` from the
 * straight line between the kept ones beside it (Douglas and Peucker 1973, The Canadian Cartographer 10, 112-122,
 * with the distance taken along y). Ends and gaps (null) stay.
 *
 * @param x in any unit, rising or level
 * @param y as many as x
 * @param within in y's unit; zero or more
 */
export function bends(x: readonly number[], y: readonly (number | null)[], within: number): number[] {
  const isKept = new Uint8Array(x.length);
  const open: [number, number][] = [];
  let from = 0;
  for (let i = 0; i <= y.length; i++) {
    const value = y[i];
    if (typeof value === 'number' && Number.isFinite(value)) continue;
    if (i < y.length) isKept[i] = 1;
    if (i > from) open.push([from, i - 1]);
    from = i + 1;
  }
  for (let part = open.pop(); part; part = open.pop()) {
    const [first, last] = part;
    isKept[first] = 1;
    isKept[last] = 1;
    const furthest = furthestFromChord(x, y, first, last);
    // One that lies on the chord is none further off, whatever is asked.
    if (furthest.off > Math.max(0, within)) open.push([first, furthest.at], [furthest.at, last]);
  }
  const kept: number[] = [];
  for (const [i, is] of isKept.entries()) if (is) kept.push(i);
  return kept;
}

function furthestFromChord(
  x: readonly number[],
  y: readonly (number | null)[],
  first: number,
  last: number,
): { at: number; off: number } {
  const x0 = x[first] ?? 0;
  const y0 = y[first] ?? 0;
  const run = (x[last] ?? 0) - x0;
  const slope = run === 0 ? 0 : ((y[last] ?? 0) - y0) / run;
  let at = first;
  let off = 0;
  for (let i = first + 1; i < last; i++) {
    const here = Math.abs((y[i] ?? 0) - y0 - slope * ((x[i] ?? 0) - x0));
    if (here > off) [at, off] = [i, here];
  }
  return { at, off };
}
