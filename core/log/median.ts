/** Median; NaN of none. Values that are no number count as largest, as in a sort. */
export function median(values: Float64Array): number {
  const a = values.slice();
  // A NaN would compare as neither and mislead the search.
  let hasGaps = false;
  for (let i = 0; i < a.length && !hasGaps; i++) hasGaps = Number.isNaN(a[i]);
  return middleOf(a, hasGaps);
}

/** Median of the numbers in a window, NaN where there are none. */
export function medianOf(values: Float64Array, from: number, to: number): number {
  const first = Math.max(0, from);
  const picked = new Float64Array(Math.max(0, Math.min(values.length, to) - first));
  let count = 0;
  for (let i = first; i < first + picked.length; i++) {
    const v = values[i] as number;
    if (!Number.isNaN(v)) picked[count++] = v;
  }
  return middleOf(picked.subarray(0, count), false);
}

/** Median of numbers, of two in the middle the upper; they are put in another order. NaN of none. */
export function upperMedian(numbers: Float64Array): number {
  const middle = numbers.length >> 1;
  select(numbers, middle);
  return numbers[middle] ?? Number.NaN;
}

/** Median of numbers that may be put in another order. */
function middleOf(a: Float64Array, hasGaps: boolean): number {
  const n = a.length;
  if (n === 0) return Number.NaN;
  const middle = n >> 1;
  if (hasGaps) a.sort();
  else select(a, middle);
  const upper = a[middle] as number;
  if (n % 2 === 1) return upper;
  let lower = a[0] as number;
  for (let i = 1; i < middle; i++) lower = Math.max(lower, a[i] as number);
  return (lower + upper) / 2;
}

/**
 * Puts the k-th smallest number in its place, what is smaller before it and what is larger behind it.
 *
 * Source: Hoare, Algorithm 65: FIND, Communications of the ACM 4 (1961) 321 (from memory).
 */
function select(a: Float64Array, k: number): void {
  let low = 0;
  let high = a.length - 1;
  while (low < high) {
    const pivot = a[k] as number;
    let i = low;
    let j = high;
    while (i <= j) {
      while ((a[i] as number) < pivot) i++;
      while ((a[j] as number) > pivot) j--;
      if (i > j) break;
      const held = a[i] as number;
      a[i] = a[j] as number;
      a[j] = held;
      i++;
      j--;
    }
    if (j < k) low = i;
    if (i > k) high = j;
  }
}
