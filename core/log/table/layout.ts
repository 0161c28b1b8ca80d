import { type BlankField, blankFields } from './blank-fields.ts';
import { type Cell, type Decimal, readCell, unquoted } from './cell.ts';
import { countsRows, type HeaderMisfit, isCommaTwice, partByBlanks, partOtherwise } from './header-fit.ts';
import { bestNames, isUnitsRow, uniqueNames } from './header-names.ts';
import { tokenise } from './tokenise.ts';

/** Where the table stands in a file and how its cells are written. */
export type Layout = {
  readonly delimiter: string;
  /** Where blanks line up the columns; null where another mark parts them, or nothing lines them up. */
  readonly fields: readonly BlankField[] | null;
  readonly decimal: Decimal;
  /** Cells of most rows; the header may hold more. */
  readonly columns: number;
  /** Columns up to the last that has a name or holds anything. */
  readonly filledColumns: number;
  /** One name per column, as in the file, made unique; never empty. */
  readonly names: readonly string[];
  /** Whether the file leaves a column without a name. */
  readonly isNameless: readonly boolean[];
  /** Unit text per column from a units row, '' where there is none. */
  readonly unitRow: readonly string[];
  /** Rows of cells that stand above the data and come back inside it where headers repeat. */
  readonly headerRows: readonly (readonly string[])[];
  /** Lines counted from 1. */
  readonly headerLine: number;
  readonly firstDataLine: number;
  /** The text above the header, for a stated sample rate. */
  readonly preamble: string;
  /** Kind of cell per column, from the rows looked at. */
  readonly cellKinds: readonly Cell['kind'][];
  /** Where names and columns do not come out even; null where they do. */
  readonly misfit: HeaderMisfit | null;
  /** How many columns at the end have no name in a header that has some. */
  readonly unnamed: number;
};

const delimiters = ['\t', ';', '|', ',', ' '] as const;

type Row = { readonly cells: readonly string[]; readonly line: number; readonly numbers: number };
type Candidate = {
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
 * Finds delimiter, decimal mark, header, units row and first row of data by trying each delimiter on the first
 * lines and keeping the one that leaves most rows of one length and full of numbers.
 *
 * @param head  text of the first lines, each complete
 * @returns     the layout, or null where no row of numbers is found
 */
export function findLayout(head: string): Layout | null {
  const few = head.includes('"') ? head : endsOf(head);
  const found = few.length < head.length ? bestCandidate(few) : null;
  const isSettled = found !== null && isBeyondDoubt(found);
  const best = isSettled ? found : bestCandidate(head);
  return best && layoutOf(best, isSettled ? few : head);
}

/** The first lines of a text and a fifth as many of the last, which tell whether the rows are another way by then. */
function endsOf(text: string): string {
  const lineEnd = /\r\n?|\n/g;
  for (let n = 0; n < firstLines; n++) if (!lineEnd.test(text)) return text;
  const firstEnd = lineEnd.lastIndex;
  lineEnd.lastIndex = Math.max(firstEnd, text.length - Math.ceil(firstEnd / 5));
  return lineEnd.test(text) ? text.slice(0, firstEnd) + text.slice(lineEnd.lastIndex) : text;
}

function bestCandidate(head: string): Candidate | null {
  const isQuoted = !strayQuote(head);
  let best: Candidate | null = null;
  for (const delimiter of delimiters) {
    if (!head.includes(delimiter)) continue;
    const candidate = tryDelimiter(head, delimiter, isQuoted);
    if (!candidate || candidate.columns === 1) continue;
    if (!best || candidate.score > best.score * 1.001) best = candidate;
  }
  // One column: what does not come up cannot cut its name.
  return best ?? tryDelimiter(head, delimiters.find((d) => !head.includes(d)) ?? ',', isQuoted);
}

/** Whether from the first row of numbers on every row has every cell, and the decimal mark has come up often. */
function isBeyondDoubt({ rows, columns, marks }: Candidate): boolean {
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

function tryDelimiter(head: string, delimiter: string, isQuoted: boolean): Candidate | null {
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

/** Cells up to the last that is filled in any row of numbers of this length. */
function filledWidth(rows: readonly Row[], length: number): number {
  return rows.reduce((most, row) => {
    if (row.numbers === 0 || row.cells.length !== length) return most;
    return Math.max(most, row.cells.findLastIndex((c) => c.trim() !== '') + 1);
  }, 0);
}

function isValue(text: string, decimal: Decimal): boolean {
  const t = text.trim();
  if (t === '' || /[,;]$/.test(t)) return false;
  const kind = readCell(t, decimal).kind;
  return kind === 'number' || kind === 'clock' || kind === 'stamp';
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

function layoutOf(found: Candidate, text: string): Layout | null {
  const { rows, columns } = found;
  const first = rows.findIndex((_, i) => beginsData(rows, i, columns));
  const firstRow = rows[first];
  if (!firstRow) return null;
  let top = first;
  while (isWideRow(rows[top - 1], columns)) top--;
  const header: Row[] = [];
  for (let i = top - 1; i >= 0 && header.length < 6; i--) {
    const row = rows[i];
    if (!row) break;
    const filled = row.cells.filter((c) => c.trim() !== '').length;
    if (filled === 0 || row.cells.every((c) => /^[-=_*#.\s]*$/.test(c))) {
      if (filled > 0) continue;
      if (header.length > 0) break;
      continue;
    }
    // A group's name may stand over its first column alone.
    const isGroup = header.length > 0 && filled >= 2 && row.cells.length === columns;
    const isFull = filled >= Math.max(Math.min(2, columns), 0.5 * columns);
    if ((!isFull && !isGroup) || row.numbers > 0.3 * filled) break;
    header.unshift(row);
    if (!isFull) break;
  }
  const lines = text.split(/\r\n?|\n/);
  const data = rows.slice(first, first + rowsBelow).filter((row) => isDataRow(row, columns));
  if (header.length === 0 && found.delimiter !== ' ') {
    const above = rows.slice(0, top).findLast((row) => filledCells(row) > 0);
    const cells = above && partOtherwise(lines[above.line - 1] ?? '', found.delimiter, columns);
    if (above && cells) header.push({ cells, line: above.line, numbers: 0 });
  }
  if (found.delimiter === ' ') {
    const below = data.map((row) => lines[row.line - 1] ?? '');
    header.forEach((row, i) => {
      if (row.cells.length === columns) return;
      const isUnits = header.length > 1 && isUnitsRow(row.cells);
      const cells = partByBlanks(lines[row.line - 1] ?? '', below, columns, isUnits);
      // Units that may belong to their neighbours are worse than none.
      if (cells) header[i] = { ...row, cells };
      else if (isUnits) header[i] = { ...row, cells: row.cells.map(() => '--') };
    });
  }
  const unitsAt = header.length > 1 ? header.findLastIndex((row) => isUnitsRow(row.cells)) : -1;
  const unitRow = unitsAt >= 0 ? (header[unitsAt]?.cells ?? []) : [];
  const told = bestNames(header.filter((_, i) => i !== unitsAt));
  const named = told.cells.findLastIndex((cell) => cell.trim() !== '') + 1;
  // A row number in front that nobody named would put every name over its neighbour's numbers.
  const isCounted =
    named === columns - 1 && told.cells.length < columns && countsRows(data.map((row) => row.cells[0] ?? ''));
  const names = isCounted ? { cells: ['', ...told.cells], line: told.line } : told;
  const twice = isCommaTwice(
    named,
    data.map((row) => row.cells),
    found.delimiter,
  );
  const isUneven = named > 0 && (twice || (found.delimiter === ' ' && told.cells.length !== columns));
  const width = Math.max(columns, names.cells.length);
  return {
    delimiter: found.delimiter,
    fields: found.fields?.length === columns ? found.fields : null,
    decimal: found.decimal,
    columns,
    filledColumns: Math.max(named + (isCounted ? 1 : 0), filledWidth(rows.slice(first), columns)),
    names: uniqueNames(names.cells, width),
    isNameless: Array.from({ length: width }, (_, i) => (names.cells[i] ?? '').trim() === ''),
    unitRow: Array.from({ length: width }, (_, i) => unitRow[i]?.trim() ?? ''),
    headerRows: header.map((row) => row.cells),
    headerLine: names.line,
    firstDataLine: rows[top]?.line ?? firstRow.line,
    preamble: rows
      .slice(0, Math.max(0, top - header.length))
      .map((row) => row.cells.join(' '))
      .join('\n'),
    misfit: isUneven ? { names: named, columns, line: told.line, isCommaTwice: twice } : null,
    unnamed: named === 0 || isCounted ? 0 : Math.max(0, filledWidth(data, columns) - told.cells.length),
    cellKinds: Array.from({ length: width }, (_, i) => kindOfColumn(rows.slice(first), i, found.decimal)),
  };
}

/** Rows of data that a header is held against. */
const rowsBelow = 100;
/** Rows looked at to be sure that a row begins the data and is no number in the preamble. */
const rowsAhead = 4;

function filledCells(row: Row): number {
  return row.cells.reduce((n, c) => n + (c.trim() === '' ? 0 : 1), 0);
}

function isDataRow(row: Row, columns: number): boolean {
  const isWide = row.cells.length >= columns && row.cells.slice(columns).every((c) => c.trim() === '');
  return isWide && row.numbers > 0 && row.numbers >= 0.4 * filledCells(row);
}

/** A row of numbers with more cells than most, above the first whole one: data all the same, and no header. */
function isWideRow(row: Row | undefined, columns: number): boolean {
  return row !== undefined && row.cells.length > columns && row.numbers > 0.7 * filledCells(row);
}

/**
 * Whether the data begin here: numbers, and more of them below. `Mass;1400` in a preamble may look like a row of
 * a narrow table, but the header still comes after it.
 */
function beginsData(rows: readonly Row[], at: number, columns: number): boolean {
  const row = rows[at];
  if (!row || !isDataRow(row, columns)) return false;
  let data = 0;
  let seen = 0;
  for (let i = at + 1; i < rows.length && seen < rowsAhead; i++) {
    const next = rows[i];
    if (!next) break;
    const filled = filledCells(next);
    if (filled === 0) continue;
    seen++;
    if (isDataRow(next, columns)) data++;
    else if (next.numbers === 0 && filled >= Math.max(2, 0.5 * columns)) return false;
  }
  return data >= seen - 1;
}

function kindOfColumn(rows: readonly Row[], column: number, decimal: Decimal): Cell['kind'] {
  const counts = new Map<Cell['kind'], number>();
  for (const row of rows.slice(0, 200)) {
    const kind = readCell(row.cells[column] ?? '', decimal).kind;
    if (kind !== 'missing') counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  let best: Cell['kind'] = 'missing';
  for (const [kind, n] of counts) if (n > (counts.get(best) ?? 0)) best = kind;
  return best;
}
