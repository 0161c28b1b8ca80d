import { toSi } from '../units/index.ts';

/**
 * Engine speeds at which a pull is told: whole multiples of 50 rpm inside [from, to], of 25 rpm where that leaves
 * fewer than twelve.  rad/s in and out.
 */
export function speedGrid(from: number, to: number): Float64Array {
  const wide = multiples(from, to, toSi(50, 'rpm'));
  return wide.length >= 12 ? wide : multiples(from, to, toSi(25, 'rpm'));
}

function multiples(from: number, to: number, step: number): Float64Array {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Float64Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}
