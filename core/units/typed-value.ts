import { z } from 'zod';
import { toSi, units } from './unit.ts';

/** For `refine`: the text must be the id of a unit of this program. */
export const expectsUnit = { params: { expects: 'unit' } };

/**
 * A number as a person typed it, with the unit they typed it in. It is kept as typed and converted on use, so
 * that 18.5 psi never comes back as 18.4999.
 */
export const TypedValueSchema = z.strictObject({
  value: z.number(),
  unit: z.string().refine((id) => units.has(id), expectsUnit),
});
export type TypedValue = z.infer<typeof TypedValueSchema>;

/** The SI number behind a typed value. */
export function siOf(typed: TypedValue): number {
  return toSi(typed.value, typed.unit);
}
