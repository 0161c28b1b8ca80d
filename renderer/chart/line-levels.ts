/** A line at one fineness; NaN in `y` is a gap. Both of one length, in the order of the samples. */
export type LineLevel = { readonly x: Float64Array; readonly y: Float64Array };

/** Points that may stay unthinned at the coarsest level: few enough to be looked through for every picture. */
const coarsest = 512;

/**
 * A line from whole to coarse: each level has half the points of the one before, of every four the smallest and
 * the largest in the order they came, so that a spike of one sample stands in all of them. A window of any width
 * is then drawn from the level that fits the screen, at a cost that does not grow with the log.
 */
export function lineLevels(x: ArrayLike<number>, y: ArrayLike<number | null>): readonly LineLevel[] {
  const whole = { x: Float64Array.from(x), y: Float64Array.from(y, (v) => v ?? Number.NaN) };
  const levels: LineLevel[] = [whole];
  for (let last: LineLevel = whole; last.x.length > coarsest; ) {
    last = halved(last);
    levels.push(last);
  }
  return levels;
}

function halved({ x, y }: LineLevel): LineLevel {
  const groups = Math.ceil(x.length / 4);
  const out = { x: new Float64Array(2 * groups), y: new Float64Array(2 * groups) };
  for (let g = 0; g < groups; g++) {
    const first = 4 * g;
    const end = Math.min(x.length, first + 4);
    let low = -1;
    let high = -1;
    for (let i = first; i < end; i++) {
      const v = y[i] as number;
      if (Number.isNaN(v)) continue;
      if (low < 0 || v < (y[low] as number)) low = i;
      if (high < 0 || v >= (y[high] as number)) high = i;
    }
    // Four gaps are a gap of the same width.
    const a = low < 0 ? first : Math.min(low, high);
    const b = low < 0 ? end - 1 : Math.max(low, high);
    out.x[2 * g] = x[a] as number;
    out.y[2 * g] = y[a] as number;
    out.x[2 * g + 1] = x[b] as number;
    out.y[2 * g + 1] = y[b] as number;
  }
  return out;
}

export type LinePart = LineLevel & { readonly from: number; readonly to: number };

/**
 * The part of a line that a window of its x shows, from the finest level that has no more than `most` points
 * there; null where the line does not enter it. A neighbour outside either edge is kept, so that the line runs on.
 */
export function partIn(
  levels: readonly LineLevel[],
  window: readonly [number, number],
  most: number,
): LinePart | null {
  let at = levels.length - 1;
  let level = levels[at] as LineLevel;
  let part = crossing(level, window, 0, level.x.length);
  while (part && at > 0) {
    const finer = levels[at - 1] as LineLevel;
    const next = crossing(
      finer,
      window,
      4 * Math.floor(part[0] / 2),
      Math.min(finer.x.length, 4 * Math.ceil(part[1] / 2)),
    );
    if (!next || next[1] - next[0] > most) break;
    at--;
    level = finer;
    part = next;
  }
  return part && { ...level, from: part[0], to: part[1] };
}

/**
 * Where between two indices the line crosses the window, with a group more either side, since the two of a group
 * stand for neighbours that are not listed.
 */
function crossing(
  { x }: LineLevel,
  [low, high]: readonly [number, number],
  begin: number,
  end: number,
): [number, number] | null {
  let from = -1;
  let to = -1;
  for (let i = begin; i < end; i++) {
    const a = x[Math.max(begin, i - 1)] as number;
    const b = x[i] as number;
    if (Math.min(a, b) > high || Math.max(a, b) < low) continue;
    if (from < 0) from = i;
    to = i + 1;
  }
  return from < 0 ? null : [Math.max(0, from - 3), Math.min(x.length, to + 2)];
}
