import type { PullCurve, VerdictWire } from '../../core/contract/index.ts';
import type { Show } from '../../core/words/index.ts';

export type Readout = {
  readonly speed: string;
  readonly before: string;
  readonly after: string;
  readonly delta: string;
};

/** Power of one pull at an engine speed [W], by a straight line between its samples; null in a gap or outside. */
export function pinnedAt(
  { engineSpeed_rad_s: speeds, wheelPower }: Pick<PullCurve, 'engineSpeed_rad_s' | 'wheelPower'>,
  at: number,
): number | null {
  for (let i = 1; i < speeds.length; i++) {
    const [s0, s1, p0, p1] = [speeds[i - 1], speeds[i], wheelPower[i - 1], wheelPower[i]];
    if (s0 == null || s1 == null || p0 == null || p1 == null) continue;
    if ((at - s0) * (at - s1) > 0 || s0 === s1) continue;
    return p0 + ((p1 - p0) * (at - s0)) / (s1 - s0);
  }
  return null;
}

/** What the curves say at one engine speed, at the nearest point of the grid; null in a gap or outside. */
export function readout(
  curve: NonNullable<VerdictWire['curve']>,
  engineSpeed_rad_s: number,
  show: Show,
): Readout | null {
  const grid = curve.engineSpeed_rad_s;
  let nearest = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < grid.length; i++) {
    const at = grid[i];
    const distance = at == null ? Number.POSITIVE_INFINITY : Math.abs(at - engineSpeed_rad_s);
    if (distance < least) {
      least = distance;
      nearest = i;
    }
  }
  const of = (values: readonly (number | null)[]) => values[nearest] ?? null;
  const [speed, before, after, delta, low, high] = [
    of(grid),
    of(curve.before),
    of(curve.after),
    of(curve.delta),
    of(curve.low),
    of(curve.high),
  ];
  if (speed === null || before === null || after === null || delta === null) return null;
  const half = low === null || high === null ? null : (high - low) / 2;
  return {
    speed: show.quantity(speed, 'engineSpeed'),
    before: show.quantity(before, 'power'),
    after: show.quantity(after, 'power'),
    delta: half === null ? show.difference(delta, 'power') : show.differenceWithHalf(delta, half, 'power'),
  };
}
