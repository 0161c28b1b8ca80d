/** What the writing of a signal leaves in it: steps of its numbers, repeats of a slow sensor. */

/** The common step of all numbers, 0 where there is none (or too few numbers to tell). */
export function stepOf(value: Float64Array): number {
  const gaps = inOrder(value);
  let smallest = Number.POSITIVE_INFINITY;
  const tiny = 1e-7 * Math.abs(gaps.at(-1) ?? 0);
  // Gaps take the place of the numbers: there are never more of them.
  let count = 0;
  let before = gaps[0] as number;
  for (let i = 1; i < gaps.length; i++) {
    const now = gaps[i] as number;
    const gap = now - before;
    before = now;
    if (gap === 0 || gap <= tiny) continue;
    gaps[count++] = gap;
    if (gap < smallest) smallest = gap;
  }
  if (count < 3) return 0;
  // A step is refined by all gaps, since the smallest carries rounding of the file.
  let steps = 0;
  let span = 0;
  let odd = 0;
  for (let i = 0; i < count; i++) {
    const gap = gaps[i] as number;
    const times = Math.round(gap / smallest);
    if (Math.abs(gap / smallest - times) > 0.15) odd++;
    else {
      steps += times;
      span += gap;
    }
  }
  return odd > 0.03 * count ? 0 : span / steps;
}

/** Numbers in order. A pull's speed nearly is: each is brought to its place from where it stands. */
function inOrder(value: Float64Array): Float64Array {
  const sorted = value.slice();
  let moves = 20 * sorted.length;
  for (let i = 1; i < sorted.length; i++) {
    const x = sorted[i] as number;
    let k = i;
    for (; k > 0 && (sorted[k - 1] as number) > x; k--) sorted[k] = sorted[k - 1] as number;
    sorted[k] = x;
    moves -= i - k;
    // Far from order: the general way is quicker.
    if (moves < 0) return sorted.sort();
  }
  return sorted;
}

/**
 * Rows on which a slow sensor was read anew, where changes keep to a beat or jump over steps.
 *
 * @param count  of changes
 */
export function beatOf(
  value: Float64Array,
  step: number,
  count: number,
): { every: number; isReading: (i: number) => boolean } | null {
  if (count < 5 || count > 0.7 * value.length) return null;
  const changes: number[] = [];
  let jump = 0;
  for (let i = 1; i < value.length; i++) {
    const d = Math.abs((value[i] as number) - (value[i - 1] as number));
    if (!(d > 0)) continue;
    changes.push(i);
    jump += d;
  }
  const widest = Math.floor(value.length / changes.length) + 1;
  for (let every = Math.min(200, widest); every >= 2; every--) {
    const counts = new Int32Array(every);
    for (const i of changes) counts[i % every] = (counts[i % every] as number) + 1;
    const phase = counts.indexOf(Math.max(...counts));
    if ((counts[phase] as number) < 0.97 * changes.length) continue;
    // A steady rise in steps keeps to a beat too, but then each beat brings one step: no sign of a slow sensor.
    const beats = (value.length - (changes[0] as number)) / every;
    const isSteadyRise = step > 0 && jump < 1.05 * step * changes.length && changes.length > 0.95 * beats - 1;
    return isSteadyRise ? null : { every, isReading: (i) => i % every === phase };
  }
  const isReading = new Set(changes);
  const jumps = step > 0 ? jump / changes.length / step : Number.POSITIVE_INFINITY;
  if (jumps < 1.6) return null;
  return { every: value.length / changes.length, isReading: (i) => isReading.has(i) };
}

/** How often a number differs from the one before it. */
export function changeCount(value: Float64Array): number {
  let changes = 0;
  for (let i = 1; i < value.length; i++) if (value[i] !== value[i - 1]) changes++;
  return changes;
}

export function isRising(value: Float64Array): boolean {
  let falls = 0;
  for (let i = 1; i < value.length; i++) if ((value[i] as number) < (value[i - 1] as number)) falls++;
  return falls <= 0.02 * value.length;
}

export function changesOf(time: Float64Array, value: Float64Array) {
  const t: number[] = [];
  const v: number[] = [];
  for (let i = 1; i < value.length; i++) {
    const before = value[i - 1] as number;
    const after = value[i] as number;
    if (after <= before) continue;
    t.push(((time[i - 1] as number) + (time[i] as number)) / 2);
    v.push((before + after) / 2);
  }
  return { time: Float64Array.from(t), value: Float64Array.from(v) };
}
