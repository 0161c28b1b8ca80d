type Fields = ReadonlyMap<string, string>;

/** Names of a table that stands inside others are looked for so deep. */
const deepest = 4;

/**
 * Rows of cells of JSON: an object a line, a list of objects or of lists, or a list of values for each name; the first
 * row holds the names. None where it holds nothing of the kind.
 */
export function rowsOfJson(text: string): string[][] {
  const whole = parsed(text);
  return whole === undefined ? rowsOfRecords(linesOf(text)) : rowsOfValue(whole, deepest);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** An object a line, else what stands in braces of a list that was cut short. */
function linesOf(text: string): unknown[] {
  const records = (parts: readonly string[]) =>
    parts.flatMap((part) => {
      const value = parsed(part.trim().replace(/,$/, ''));
      return typeof value === 'object' ? [value] : [];
    });
  const lines = records(text.split(/\r\n?|\n/));
  return lines.length > 1 ? lines : records(text.match(/\{[^{}]*\}/g) ?? []);
}

function rowsOfValue(value: unknown, depth: number): string[][] {
  if (Array.isArray(value)) {
    if (value.every(Array.isArray)) return value.map((row: unknown[]) => row.map(cellOf));
    return rowsOfRecords(value);
  }
  if (typeof value !== 'object' || value === null || depth === 0) return [];
  const lists = Object.entries(value).filter((e): e is [string, unknown[]] => Array.isArray(e[1]));
  const columns = lists.filter(([, list]) => list.every((v) => typeof v !== 'object' || v === null));
  const length = columns[0]?.[1].length ?? 0;
  if (columns.length > 1 && columns.every(([, list]) => list.length === length))
    return [
      columns.map(([name]) => name),
      ...Array.from({ length }, (_, i) => columns.map(([, list]) => cellOf(list[i]))),
    ];
  return Object.values(value)
    .map((inner) => rowsOfValue(inner, depth - 1))
    .reduce((most, rows) => (rows.length > most.length ? rows : most), []);
}

function rowsOfRecords(values: readonly unknown[]): string[][] {
  const records = values
    .filter((v) => typeof v === 'object' && v !== null && !Array.isArray(v))
    .map(fieldsOf);
  if (records.length === 0) return [];
  const names = [...new Set(records.flatMap((fields) => [...fields.keys()]))];
  return [names, ...records.map((fields) => names.map((name) => fields.get(name) ?? ''))];
}

/** `{"gps": {"speed": 3}}` is the field `gps speed`. */
function fieldsOf(record: unknown): Fields {
  const fields = new Map<string, string>();
  const take = (value: unknown, name: string, depth: number) => {
    if (typeof value === 'object' && value !== null && !Array.isArray(value) && depth > 0)
      for (const [key, inner] of Object.entries(value)) take(inner, `${name} ${key}`.trim(), depth - 1);
    else fields.set(name, cellOf(value));
  };
  take(record, '', deepest);
  return fields;
}

function cellOf(value: unknown): string {
  return value === null || value === undefined || typeof value === 'object' ? '' : String(value);
}
