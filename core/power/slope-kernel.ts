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
  return (time[Math.min(n - 1, right + 1)] as number) - (time[left] as number);
}
