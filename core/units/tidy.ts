/**
 * A number as it leaves the program for files and scripts: six digits, past what any input is known to, and free of
 * 39.99999999.
 *
 * Check: 39.99999999 is 40, and 0.123456789 is 0.123457.
 */
export function tidy(value: number): number {
  return Number(value.toPrecision(6));
}
