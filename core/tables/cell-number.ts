const plain = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;

/** What a cell says without its quotes, blanks and byte-order mark. */
export function bareCell(raw: string): string {
  return raw
    .replace(/^\uFEFF/, '')
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim()
    .replace(/\u2212/g, '-');
}

/** A cell as a number, decimal point or comma; NaN where it is none. */
export function cellNumber(raw: string): number {
  const bare = bareCell(raw);
  return plain.test(bare) ? Number(bare.replace(',', '.')) : Number.NaN;
}

/** Digits after the decimal mark as written. */
export function decimalsOf(raw: string): number {
  return bareCell(raw).match(/[.,](\d*)/)?.[1]?.length ?? 0;
}

/** A new number in the dress of the old cell: its quotes, blanks, decimal mark; at least its digits. */
export function dressed(raw: string, value: number, decimals: number, mark: '.' | ','): string {
  const digits = value.toFixed(Math.max(decimals, decimalsOf(raw)));
  // Minus nothing is nothing.
  const text = (Number(digits) === 0 ? digits.replace('-', '') : digits).replace('.', mark);
  const bare = raw
    .replace(/^\uFEFF/, '')
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim();
  const at = raw.indexOf(bare);
  return raw.slice(0, at) + text + raw.slice(at + bare.length);
}
