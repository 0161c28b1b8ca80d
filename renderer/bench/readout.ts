import type { VerdictWire } from '../../core/contract/index.ts';
import type { Show } from '../../core/words/index.ts';

export type Readout = {
  readonly speed: string;
  readonly before: string;
  readonly after: string;
  readonly delta: string;
};

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
