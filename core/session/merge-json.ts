import { isJsonObject, sameJson } from './json-difference.ts';

/**
 * Where two copies were changed in different ways. `value`: mine was kept. `removed`: one side removed what the
 * other changed; it was kept. `order`: both added to one list; mine stand first.
 */
export type MergeConflict = {
  readonly path: string;
  readonly kind: 'value' | 'removed' | 'order';
  readonly base: unknown;
  readonly mine: unknown;
  readonly theirs: unknown;
};

/** Fields by which the elements of a list are known again, in the order in which they are tried. */
export const keyFields = ['id', 'runId', 'column'] as const;

type Keyed = ReadonlyMap<string, unknown>;

/**
 * Two changed copies of a JSON value brought together over the version that both come from. What one side
 * changed is taken, what both changed alike too; the rest is a conflict, and mine stands. Without a common
 * version (`undefined`) nothing counts as removed, and every difference is a conflict.
 *
 * Lists of things with an id are merged thing by thing; other lists that only grew get both additions.
 */
export function mergeJson(
  base: unknown,
  mine: unknown,
  theirs: unknown,
): { value: unknown; conflicts: MergeConflict[] } {
  const conflicts: MergeConflict[] = [];
  return { value: merge(base, mine, theirs, '', conflicts), conflicts };
}

function merge(
  base: unknown,
  mine: unknown,
  theirs: unknown,
  path: string,
  conflicts: MergeConflict[],
): unknown {
  if (sameJson(mine, theirs)) return mine;
  if (base !== undefined && sameJson(mine, base)) return theirs;
  if (base !== undefined && sameJson(theirs, base)) return mine;
  if (isJsonObject(mine) && isJsonObject(theirs)) {
    return mergeObjects(isJsonObject(base) ? base : undefined, mine, theirs, path, conflicts);
  }
  if (Array.isArray(mine) && Array.isArray(theirs)) {
    const old = Array.isArray(base) ? base : undefined;
    const field = keyFields.find((f) => [old ?? [], mine, theirs].every((list) => isKeyedBy(list, f)));
    if (field) return mergeKeyed(old, mine, theirs, field, path, conflicts);
    if (old && startsWith(mine, old) && startsWith(theirs, old)) {
      return mergeGrown(old, mine, theirs, path, conflicts);
    }
  }
  conflicts.push({ path, kind: 'value', base, mine, theirs });
  return mine;
}

function mergeObjects(
  base: Record<string, unknown> | undefined,
  mine: Record<string, unknown>,
  theirs: Record<string, unknown>,
  path: string,
  conflicts: MergeConflict[],
): Record<string, unknown> {
  const merged = mergeEntries(
    base && new Map(Object.entries(base)),
    new Map(Object.entries(mine)),
    new Map(Object.entries(theirs)),
    path,
    conflicts,
  );
  const order = [...Object.keys(mine), ...Object.keys(theirs)];
  const keys = [...new Set(order)].filter((key) => merged.has(key));
  return Object.fromEntries(keys.map((key) => [key, merged.get(key)]));
}

/** Each key's value, without those that one side removed and the other left alone. */
function mergeEntries(
  base: Keyed | undefined,
  mine: Keyed,
  theirs: Keyed,
  path: string,
  conflicts: MergeConflict[],
): Keyed {
  const merged = new Map<string, unknown>();
  for (const key of new Set([...mine.keys(), ...theirs.keys()])) {
    const at = path === '' ? key : `${path}.${key}`;
    const [b, m, t] = [base?.get(key), mine.get(key), theirs.get(key)];
    if (mine.has(key) && theirs.has(key)) {
      merged.set(key, merge(b, m, t, at, conflicts));
      continue;
    }
    const kept = mine.has(key) ? m : t;
    if (base?.has(key)) {
      if (sameJson(kept, b)) continue;
      conflicts.push({ path: at, kind: 'removed', base: b, mine: m, theirs: t });
    }
    merged.set(key, kept);
  }
  return merged;
}

function isKeyedBy(list: readonly unknown[], field: string): boolean {
  const keys = list.map((item) => (isJsonObject(item) ? item[field] : undefined));
  return keys.every((key) => typeof key === 'string') && new Set(keys).size === keys.length;
}

function byKey(list: readonly unknown[], field: string): Map<string, unknown> {
  return new Map(list.map((item) => [String((item as Record<string, unknown>)[field]), item]));
}

function mergeKeyed(
  base: readonly unknown[] | undefined,
  mine: readonly unknown[],
  theirs: readonly unknown[],
  field: string,
  path: string,
  conflicts: MergeConflict[],
): unknown[] {
  const [b, m, t] = [base && byKey(base, field), byKey(mine, field), byKey(theirs, field)];
  const merged = mergeEntries(b, m, t, path, conflicts);
  const common = (keys: Iterable<string>) => [...keys].filter((key) => m.has(key) && t.has(key));
  // Who alone moved things decides the order; where both did, mine stands.
  const isMineMoved = b && !sameJson(common(m.keys()), common(b.keys()));
  const isTheirsMoved = b && !sameJson(common(t.keys()), common(b.keys()));
  const [first, second] = isTheirsMoved && !isMineMoved ? [t, m] : [m, t];
  const order = [...first.keys()];
  const lastCommon = [...second.keys()].findLastIndex((key) => first.has(key));
  let before: string | undefined;
  for (const [index, key] of [...second.keys()].entries()) {
    if (index > lastCommon && !first.has(key)) {
      // What was put at the end belongs at the end, whatever was moved before it.
      order.push(key);
    } else if (!first.has(key)) {
      const after = before === undefined ? -1 : order.indexOf(before);
      // After what the other side added at the same place.
      let at = after + 1;
      while (at < order.length && !second.has(order[at] ?? '')) at++;
      order.splice(at, 0, key);
    }
    before = key;
  }
  const added = (side: Keyed, other: Keyed) => [...side.keys()].some((k) => !other.has(k) && !b?.has(k));
  if (added(m, t) && added(t, m)) conflicts.push({ path, kind: 'order', base, mine, theirs });
  return order.filter((key) => merged.has(key)).map((key) => merged.get(key));
}

function startsWith(list: readonly unknown[], start: readonly unknown[]): boolean {
  return start.every((item, i) => i < list.length && sameJson(item, list[i]));
}

function mergeGrown(
  base: readonly unknown[],
  mine: readonly unknown[],
  theirs: readonly unknown[],
  path: string,
  conflicts: MergeConflict[],
): unknown[] {
  const added = mine.slice(base.length);
  const more = theirs.slice(base.length).filter((item) => !added.some((other) => sameJson(item, other)));
  if (added.length > 0 && more.length > 0) conflicts.push({ path, kind: 'order', base, mine, theirs });
  return [...mine, ...more];
}
