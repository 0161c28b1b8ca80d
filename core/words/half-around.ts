/**
 * How far the truth may lie from a value by its 95 % interval: to the farther end, where the value is not in the
 * middle of it, so that "give or take" never promises more than the interval does.
 *
 * @param interval  low and high end, in the unit of the value
 */
export function halfAround(value: number, [low, high]: readonly [number, number]): number {
  return Math.max(value - low, high - value);
}
