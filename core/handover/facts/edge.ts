import { fromSi, tidy } from '../../units/index.ts';

/** An SI number as it leaves the program in `unit`; null stays null, and so does what is no number. */
export function edge(value: number | null | undefined, unit: string): number | null {
  return value == null || !Number.isFinite(value) ? null : tidy(fromSi(value, unit));
}

/** A whole curve; a gap is null. */
export function edgeCurve(values: ArrayLike<number>, unit: string): (number | null)[] {
  return Array.from(values, (v) => edge(v, unit));
}

/** Low and high. */
export function edgePair(pair: readonly [number, number], unit: string): [number, number] {
  return [tidy(fromSi(pair[0], unit)), tidy(fromSi(pair[1], unit))];
}
