/**
 * One cell of a CSV that a spreadsheet may open: quoted where it must be, and with an apostrophe in front where
 * a spreadsheet would take a text for a formula. Numbers are written by this program and pass as they are.
 */
export function csvCell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const harmless = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",;\n\r]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** Rows as RFC 4180 text: comma, point as decimal sign, CRLF. */
export function csvText(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}
