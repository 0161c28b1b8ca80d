import { type BlankField, blankFields } from './blank-fields.ts';
import { type Decimal, readCell, unquoted } from './cell.ts';
import { isPlainlyPosition } from './position-cell.ts';
import { tokenise } from './tokenise.ts';

const delimiters = ['\t', ';', '|', ',', ' '] as const;

/** A row of a text, the line it begins in, and how many of its cells hold a number or a time. */
export type Row = { readonly cells: readonly string[]; readonly line: number; readonly numbers: number };
/** How the cells of a text are parted and its numbers written. */
export type Dialect = {
  readonly delimiter: string;
  readonly fields: readonly BlankField[] | null;
  readonly decimal: Decimal;
  readonly rows: readonly Row[];
  readonly columns: number;
  readonly score: number;
  /** Cells that tell the decimal mark. */
  readonly marks: number;
};

/** Lines that settle the layout of a log whose rows are all alike: a tenth of the head of a usual one. */
const firstLines = 300;
/** So many rows, and cells of them that tell the decimal mark, leave no doubt; more of the same say nothing new. */
const plenty = 200;

/**
 * Finds delimiter and decimal mark by trying each delimiter and keeping the one that leaves most rows of one length
 * and full of numbers.
 *
 * @param head  text of the first lines, each complete
 * @returns     the dialect and the text that settled it, whole or its ends; null where no row of numbers is found
 */
export function findDialect(head: string): { readonly dialect: Dialect; readonly text: string } | null {
  const few = head.includes('"') ? head : endsOf(head);
  const found = few.length < head.length ? bestDialect(few) : null;
  if (found && isBeyondDoubt(found)) return { dialect: found, text: few };
  const dialect = bestDialect(head);
  return dialect && { dialect, text: head };
}

/** The first lines of a text and a fifth as many of the last, which tell whether the rows are another way by then. */
function endsOf(text: string): string {
  const lineEnd = /\r\n?|\n/g;
  for (let n = 0; n < firstLines; n++) if (!lineEnd.test(text)) return text;
  const firstEnd = lineEnd.lastIndex;
  lineEnd.lastIndex = Math.max(firstEnd, text.length - Math.ceil(firstEnd / 5));
  return lineEnd.test(text) ? text.slice(0, firstEnd) + text.slice(lineEnd.lastIndex) : text;
}

function bestDialect(head: string): Dialect | null {
  const isQuoted = !strayQuote(head);
  let best: Dialect | null = null;
  for (const delimiter of delimiters) {
    if (!head.includes(delimiter)) continue;
    const dialect = tryDelimiter(head, delimiter, isQuoted);
    if (!dialect || dialect.columns === 1) continue;
    if (!best || dialect.score > best.score * 1.001) best = dialect;
  }
  // One column: what does not come up cannot cut its name.
  return best ?? tryDelimiter(head, delimiters.find((d) => !head.includes(d)) ?? ',', isQuoted);
}

/** Whether from the first row of numbers on every row has every cell, and the decimal mark has come up often. */
function isBeyondDoubt({ rows, columns, marks }: Dialect): boolean {
  const data = rows.slice(rows.findIndex((row) => row.numbers > 0.4 * columns));
  // The text ends with a line end, behind which the tokeniser sees one more, empty row.
  if (data.at(-1)?.cells.join('') === '') data.pop();
  return (
    columns > 1 &&
    marks >= plenty &&
    data.length >= plenty &&
    data.every((row) => row.cells.length === columns && row.numbers === columns)
  );
}

/**
 * An odd count of quotes means one is a sign of its own, an inch say; unless most lines with quotes close what they
 * open, and one was cut within a cell.
 */
function strayQuote(text: string): boolean {
  let oddLines = 0;
  let evenLines = 0;
  for (const line of text.split(/[\r\n]+/)) {
    const count = line.split('"').length - 1;
    if (count % 2 === 1) oddLines++;
    else if (count > 0) evenLines++;
  }
  return oddLines % 2 === 1 && oddLines >= evenLines;
}

function tryDelimiter(head: string, delimiter: string, isQuoted: boolean): Dialect | null {
  const isLinedUp = delimiter === ' ' && !/["\t]/.test(head);
  const fields = isLinedUp ? blankFields(head.split(/\r\n?|\n/)) : null;
  const cells = tokenise(head, delimiter, isQuoted, fields);
  const { decimal, marks } = findDecimal(cells, delimiter);
  let line = 1;
  const rows = cells.map((row): Row => {
    const at = line;
    // A quoted cell may hold line ends of its own.
    line += row.reduce((n, c) => n + c.split('\n').length - 1, 1);
    return { cells: row, line: at, numbers: row.reduce((n, c) => n + (isValue(c, decimal) ? 1 : 0), 0) };
  });
  const widths = new Map<number, { rows: number; share: number }>();
  const data = rows.flatMap((row) => {
    const filled = filledCells(row);
    if (row.numbers === 0 || row.numbers < 0.4 * filled) return [];
    const end = row.cells.findLastIndex((c) => c.trim() !== '') + 1;
    widths.set(row.cells.length, { rows: 0, share: 0 });
    return [{ end, length: row.cells.length, share: row.numbers / filled }];
  });
  let columns = 0;
  let score = 0;
  for (const [width, seen] of widths) {
    // Some rows may end in stray delimiters and others not.
    for (const { end, length, share } of data) {
      if (end > width || length < width) continue;
      seen.rows++;
      seen.share += share;
    }
    // Squared, since a wrong delimiter leaves some cells whole but rarely all of a row.
    const s = seen.rows * (seen.share / seen.rows) ** 2 * (width > 1 ? 1 : 0.01);
    if (s > score || (s === score && width > columns)) {
      columns = width;
      score = s;
    }
  }
  return columns === 0 ? null : { delimiter, fields, decimal, rows, columns, score, marks };
}

function isValue(text: string, decimal: Decimal): boolean {
  const t = text.trim();
  if (t === '' || /[,;]$/.test(t)) return false;
  const kind = readCell(t, decimal).kind;
  return kind === 'number' || kind === 'clock' || kind === 'stamp' || isPlainlyPosition(t);
}

/** The decimal mark, by what can be nothing else: `0,5`, `12,34`, `1.234,5` against `0.5`, `1,234.5`. */
function findDecimal(
  rows: readonly (readonly string[])[],
  delimiter: string,
): { readonly decimal: Decimal; readonly marks: number } {
  let comma = 0;
  let point = 0;
  for (const row of rows) {
    for (const written of row) {
      const cell = unquoted(written.trim());
      const m = /^\s*[-+]?(\d*)([.,])(\d+)(?:[eE][-+]?\d+)?\s*(?:[^\d.,].{0,12})?$/.exec(cell);
      if (m) {
        // `1,234` may be grouped digits: the word of the delimiter decides.
        const isGrouped = m[3]?.length === 3 && /^[1-9]\d{0,2}$/.test(m[1] ?? '');
        const weight = isGrouped ? 0.01 : 1;
        if (m[2] === ',') {
          if (isGrouped && delimiter === ',') point += weight;
          else comma += weight;
        } else point += weight;
      } else if (/^\s*[-+]?\d{1,3}(\.\d{3})+,\d+\s*$/.test(cell)) comma++;
      else if (/^\s*[-+]?\d{1,3}(,\d{3})+\.\d+\s*$/.test(cell)) point++;
    }
  }
  return { decimal: comma > point ? ',' : '.', marks: Math.abs(comma - point) };
}

/** Cells of a row that are not blank. */
export function filledCells(row: Row): number {
  return row.cells.reduce((n, c) => n + (c.trim() === '' ? 0 : 1), 0);
}
