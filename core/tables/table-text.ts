/** A table as it was pasted, cut into cells that join to exactly the same text again. */
export type TableText = {
  readonly delimiter: string;
  /** `cells` as written, quotes and blanks included; `ending` is what closes the line, empty at the very end. */
  readonly rows: readonly { readonly cells: readonly string[]; readonly ending: string }[];
};

const delimiters = ['\t', ';', ',', ' '] as const;

/** The delimiter that cuts most lines into one and the same number of cells. */
function delimiterOf(lines: readonly string[]): string {
  let [best, most] = ['\t', 0];
  for (const delimiter of delimiters) {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const cells = cut(line.trim(), delimiter).length;
      if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1);
    }
    // 0.001: of two that agree as often, the one that makes more cells, tab before semicolon before comma.
    for (const [cells, times] of counts) {
      const score = times + 0.001 * Math.min(99, cells);
      if (score > most + 1e-9) [best, most] = [delimiter, score];
    }
  }
  return best;
}

/** A line into cells, a delimiter in quotes left alone. */
function cut(line: string, delimiter: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let inQuotes = false;
  for (const letter of line) {
    if (letter === '"') inQuotes = !inQuotes;
    if (letter === delimiter && !inQuotes) {
      cells.push(cell);
      cell = '';
    } else cell += letter;
  }
  cells.push(cell);
  return cells;
}

/** Cuts a text; joinTable gives it back byte for byte. */
export function cutTable(text: string): TableText {
  const lines: { line: string; ending: string }[] = [];
  for (const match of text.matchAll(/([^\r\n]*)(\r\n|\n|\r|$)/g)) {
    const [whole, line = '', ending = ''] = match;
    if (whole === '') continue;
    lines.push({ line, ending });
  }
  const delimiter = delimiterOf(lines.map((l) => l.line));
  return { delimiter, rows: lines.map(({ line, ending }) => ({ cells: cut(line, delimiter), ending })) };
}

export function joinTable({ rows, delimiter }: TableText): string {
  return rows.map((row) => row.cells.join(delimiter) + row.ending).join('');
}
