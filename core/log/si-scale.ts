import { kindOf, type Unit, units } from '../units/index.ts';
import { type QuantityId, quantities } from './quantity.ts';

/** si = value * factor + offset. */
export type SiScale = Pick<Unit, 'factor' | 'offset'>;

/**
 * A pedal or throttle may be logged as its sensor's angle or voltage: a plate turns a quarter, a sensor is fed 5 V
 * (common practice). What full reads is then told from the log, so the scale need not be exact.
 */
const openings: Readonly<Record<string, SiScale>> = {
  deg: { factor: 1 / 90, offset: 0 },
  V: { factor: 1 / 5, offset: 0 },
  mV: { factor: 1 / 5000, offset: 0 },
};

/**
 * From a file's numbers to SI for a quantity; null where the unit cannot measure it. A plain number takes any
 * unit, since it is not converted.
 */
export function siScale(quantity: QuantityId, unit: string): SiScale | null {
  const kind = kindOf(quantities[quantity]);
  if (kind === 'number') return { factor: 1, offset: 0 };
  const known = units.get(unit);
  if (known?.kind === kind) return known;
  return quantity === 'pedal' || quantity === 'throttle' ? (openings[unit] ?? null) : null;
}
