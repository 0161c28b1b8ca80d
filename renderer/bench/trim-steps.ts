/** A step that a person hears of in a log, with Shift [s]; fields of time step by as much. */
export const coarseStep_s = 0.1;

/**
 * Where an end goes by one step: to the next sample, or by a tenth of a second.
 *
 * @param time  when the samples were taken [s], ascending, one or more
 * @param at_s  where the end stands [s], on a sample or between two
 * @returns     [s], never beyond the samples
 */
export function movedEnd(time: Float64Array, at_s: number, direction: 1 | -1, isCoarse: boolean): number {
  const [first, last] = [time[0] ?? at_s, time[time.length - 1] ?? at_s];
  if (isCoarse) return Math.min(last, Math.max(first, at_s + direction * coarseStep_s));
  // A field shows thousandths: what lies that near is the sample that the end stands on.
  const rounding_s = 0.0005;
  const next =
    direction > 0 ? time.find((t) => t > at_s + rounding_s) : time.findLast((t) => t < at_s - rounding_s);
  return next ?? (direction > 0 ? last : first);
}

/** The sample that was taken nearest to a moment: its place in `time`, -1 where there is none. */
export function nearestSample(time: Float64Array, at_s: number): number {
  let nearest = -1;
  for (let i = 0; i < time.length; i++)
    if (nearest < 0 || Math.abs((time[i] ?? 0) - at_s) < Math.abs((time[nearest] ?? 0) - at_s)) nearest = i;
  return nearest;
}
