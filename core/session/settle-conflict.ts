import { isJsonObject } from './json-difference.ts';
import { keyFields, type MergeConflict } from './merge-json.ts';

export type MergeSide = 'mine' | 'theirs';

/** A spot in a JSON value: the object or list that holds it, and its key or place there. */
type Spot =
  | { readonly holder: Record<string, unknown>; readonly key: string }
  | { readonly holder: unknown[]; readonly at: number };

/**
 * The value at the path of a conflict, `undefined` where nothing stands there. Elements of a list are named by
 * their id, as in the path that the merge gave.
 */
export function valueAt(json: unknown, path: string): unknown {
  const spot = spotOf(json, path);
  if (!spot) return undefined;
  return 'at' in spot ? spot.holder[spot.at] : ownValue(spot.holder, spot.key);
}

/**
 * A copy of `json` in which a conflict is settled for one side: its value, or nothing where that side had
 * removed it. Null where the place itself is gone, say with the entry it stood in.
 */
export function settleConflict(
  json: unknown,
  conflict: Pick<MergeConflict, 'path' | 'mine' | 'theirs'>,
  side: MergeSide,
): unknown {
  const copy: unknown = copyOf(json);
  const value = copyOf(conflict[side]);
  const spot = spotOf(copy, conflict.path);
  if (spot && 'at' in spot) {
    if (value === undefined) spot.holder.splice(spot.at, 1);
    else spot.holder[spot.at] = value;
    return copy;
  }
  if (spot) {
    if (value === undefined) delete spot.holder[spot.key];
    else put(spot.holder, spot.key, value);
    return copy;
  }
  return settleInList(copy, conflict.path, value);
}

function copyOf(json: unknown): unknown {
  return json === undefined ? undefined : JSON.parse(JSON.stringify(json));
}

/** An element that was removed since comes back at the end of its list. */
function settleInList(copy: unknown, path: string, value: unknown): unknown {
  const cut = path.lastIndexOf('.');
  const list = cut < 0 ? undefined : valueAt(copy, path.slice(0, cut));
  if (!Array.isArray(list)) return null;
  if (value !== undefined) list.push(value);
  return copy;
}

/** By definition, not assignment: a key named `__proto__` in a stranger's file is a key like any other. */
function put(holder: Record<string, unknown>, key: string, value: unknown): void {
  Object.defineProperty(holder, key, { value, writable: true, enumerable: true, configurable: true });
}

function ownValue(holder: Record<string, unknown>, key: string): unknown {
  return Object.hasOwn(holder, key) ? holder[key] : undefined;
}

/** Keys may hold dots themselves (`asTyped`), so every key that the path begins with is tried. */
function spotOf(json: unknown, path: string): Spot | null {
  if (Array.isArray(json)) {
    for (const [at, item] of json.entries()) {
      if (!isJsonObject(item)) continue;
      for (const field of keyFields) {
        const key = item[field];
        if (typeof key !== 'string') continue;
        if (key === path) return { holder: json, at };
        const inside = path.startsWith(`${key}.`) ? spotOf(item, path.slice(key.length + 1)) : null;
        if (inside) return inside;
      }
    }
    return null;
  }
  if (!isJsonObject(json)) return null;
  if (Object.hasOwn(json, path)) return { holder: json, key: path };
  for (const key of Object.keys(json)) {
    const inside = path.startsWith(`${key}.`) ? spotOf(json[key], path.slice(key.length + 1)) : null;
    if (inside) return inside;
  }
  // Not there yet: what the other side added or kept goes here.
  return path.includes('.') && Object.keys(json).some((key) => path.startsWith(`${key}.`))
    ? null
    : { holder: json, key: path };
}
