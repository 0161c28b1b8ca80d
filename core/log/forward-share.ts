/** Share of steps that do not go backwards. */
export function forwardShare(values: Float64Array): number {
  let forward = 0;
  let all = 0;
  for (let i = 1; i < values.length; i++) {
    const d = (values[i] as number) - (values[i - 1] as number);
    if (Number.isNaN(d)) continue;
    all++;
    if (d >= 0) forward++;
  }
  return all === 0 ? 0 : forward / all;
}
