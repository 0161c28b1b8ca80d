/**
 * The slope weights, summed from the left, are the kernel through which the true slope is seen (summation by
 * parts); its full width at half its greatest height.
 *
 * @param time  of each weight
 */
export function widthOfKernel(weights: Float64Array, time: Float64Array): number {
  const n = weights.length;
  const seen = new Float64Array(n);
  let sum = 0;
  let peak = 0;
  for (let i = 0; i < n; i++) {
    sum -= weights[i] as number;
    seen[i] = sum;
    peak = Math.max(peak, sum);
  }
  let left = 0;
  while (left < n - 1 && (seen[left] as number) < peak / 2) left++;
  let right = n - 1;
  while (right > left && (seen[right] as number) < peak / 2) right--;
  // Between two weights the kernel is flat; its height is told half way, and lines between tell where it halves.
  const at = (i: number) => ((time[i] as number) + (time[Math.min(n - 1, i + 1)] as number)) / 2;
  const crossing = (inside: number, outside: number) => {
    if (outside < 0 || outside >= n) return at(inside);
    const high = seen[inside] as number;
    const share = (high - peak / 2) / (high - (seen[outside] as number));
    return at(inside) + share * (at(outside) - at(inside));
  };
  return crossing(right, right + 1) - crossing(left, left - 1);
}
