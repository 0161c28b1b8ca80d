import { fail, ok, type Result } from '../result/index.ts';
import { toSi } from '../units/index.ts';

/** 20,000 rpm: past any car engine. */
const fastest = toSi(20_000, 'rpm');

/**
 * Engine speeds at which a pull is told: whole multiples of 50 rpm inside [from, to], of 25 rpm where that leaves
 * fewer than twelve.  rad/s in and out.
 *
 * Errors: power/engine-too-fast past 20,000 rpm.
 */
export function speedGrid(from: number, to: number): Result<Float64Array> {
  if (!(to <= fastest)) return fail({ code: 'power/engine-too-fast', facts: { engineSpeed: to } });
  const above = Math.max(0, from);
  const wide = multiples(above, to, toSi(50, 'rpm'));
  return ok(wide.length >= 12 ? wide : multiples(above, to, toSi(25, 'rpm')));
}

function multiples(from: number, to: number, step: number): Float64Array {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  const speeds = new Float64Array(Math.max(0, last - first + 1));
  for (let i = 0; i < speeds.length; i++) speeds[i] = (first + i) * step;
  return speeds;
}
