import { median } from '../../log/index.ts';

/** Speed of a roll against the fit of all. */
export type Stray = {
  readonly time: Float64Array;
  /** Speed less the fit's [m/s]. */
  readonly residual: Float64Array;
};

/** A stretch of a roll in which more held the car back than in the rest. */
export type HeldBack = {
  readonly from_s: number;
  readonly to_s: number;
  /** Beyond the fit, mean over the stretch [m/s^2]. */
  readonly slowing: number;
};

/** A foot touches the brake for longer (common practice); noise of a speed is small over so long [s]. */
const span_s = 4;
/** Half a percent of slope: no road is called level beyond it (common practice) [m/s^2]. */
const leastSlowing = 0.05;
/** Beyond what the rest of the roll scatters by: one stretch in millions, were it chance. */
const beyondScatter = 5;

/**
 * The stretch in which a roll was slowed most beyond the fit, where that is beyond what a level road and the roll's own
 * scatter can: a brake, a dip, a gust. The fit takes it for rolling and drag, and its intervals do not know.
 *
 *   slowing = -(r(t + T) - r(t)) / T,  T = 4 s;  clear beyond 0.05 m/s^2 and 5 * 1.4826 median |slowing - median|
 *
 * @returns  null where no stretch is clear, or the roll is too short to have others beside it
 * Source: median absolute deviation as a robust standard deviation, Rousseeuw and Croux, JASA 88 (1993) 1273 (from memory).
 * Check:  2 s at 0.5 m/s^2 beyond the fit are 0.25 m/s^2 over the span.
 */
export function heldBack({ time, residual }: Stray): HeldBack | null {
  const slowings: number[] = [];
  const starts: number[] = [];
  const ends: number[] = [];
  let end = 0;
  for (let i = 0; i < time.length; i++) {
    const from = time[i] as number;
    while (end < time.length && (time[end] as number) - from < span_s) end++;
    if (end === time.length) break;
    const seconds = (time[end] as number) - from;
    slowings.push(((residual[i] as number) - (residual[end] as number)) / seconds);
    starts.push(from);
    ends.push(time[end] as number);
  }
  if (starts.length === 0 || (starts.at(-1) as number) - (starts[0] as number) < 3 * span_s) return null;
  const usual = median(Float64Array.from(slowings));
  const scatter = 1.4826 * median(Float64Array.from(slowings, (s) => Math.abs(s - usual)));
  const least = Math.max(leastSlowing, usual + beyondScatter * scatter);
  let most = 0;
  for (let i = 1; i < slowings.length; i++)
    if ((slowings[i] as number) > (slowings[most] as number)) most = i;
  const slowing = slowings[most] as number;
  if (!(slowing > least)) return null;
  return { from_s: starts[most] as number, to_s: ends[most] as number, slowing };
}
