import { z } from 'zod';

type Bare<T> = T extends z.ZodDefault<infer Inner> ? Inner : T;

/**
 * A patch of some fields of a schema: what is left out stays as it is. Defaults are taken off first, as zod fills
 * them in under `partial` too, and a patch of one field would then reset all others.
 */
export function patchOf<S extends Readonly<Record<string, z.ZodType>>>(shape: S) {
  const fields = Object.entries(shape).map(([name, field]) => [
    name,
    (field instanceof z.ZodDefault ? (field.unwrap() as z.ZodType) : field).optional(),
  ]);
  return z.strictObject(Object.fromEntries(fields) as { [K in keyof S]: z.ZodOptional<Bare<S[K]>> });
}
