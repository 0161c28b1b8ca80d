/** True for a JSON object: not null, not a list. */
export function isJsonObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** True where two JSON values say the same; the order of keys does not count. */
export function sameJson(a: unknown, b: unknown): boolean {
  return differingFields(a, b, 1).length === 0;
}

/**
 * Paths of the fields in which two JSON values differ, `ledger.2.note`, at most `limit` of them. A value that
 * has no counterpart is named once, not field by field; two scalars at the top give the empty path.
 */
export function differingFields(a: unknown, b: unknown, limit = 50): string[] {
  const found: string[] = [];
  const visit = (one: unknown, other: unknown, path: string) => {
    if (found.length >= limit || Object.is(one, other)) return;
    const areLists = Array.isArray(one) && Array.isArray(other);
    if (areLists || (isJsonObject(one) && isJsonObject(other))) {
      const left = one as Record<string, unknown>;
      const right = other as Record<string, unknown>;
      for (const key of new Set([...Object.keys(left), ...Object.keys(right)])) {
        const isInBoth = Object.hasOwn(left, key) && Object.hasOwn(right, key);
        const at = path === '' ? key : `${path}.${key}`;
        if (isInBoth) visit(left[key], right[key], at);
        else if (found.length < limit) found.push(at);
      }
      return;
    }
    found.push(path);
  };
  visit(a, b, '');
  return found;
}
