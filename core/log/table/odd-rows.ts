import type { ColumnMapping } from '../columns/column-mapping.ts';
import { headerParts } from '../columns/header-unit.ts';
import { matchName } from '../columns/name-match.ts';
import { letterColumn, type PositionColumn, positionColumn } from '../columns/position-column.ts';
import { type Cell, readCell } from './cell.ts';
import type { ColumnStore } from './column-store.ts';
import { halfCell } from './half-cell.ts';
import type { Layout } from './layout.ts';
import { positionCell } from './position-cell.ts';

/** What was noticed row by row. Lines are 0 where nothing was. */
export type RowNews = {
  rowsSkipped: number;
  firstSkippedLine: number;
  /** Rows with more numbers than there are columns. */
  rowsWide: number;
  firstWideLine: number;
  headersRepeated: number;
  firstRepeatedLine: number;
  /** Line of a last row that was cut; -1 while the file's end only may be. */
  cutLine: number;
  paddedBytes: number;
  /** Rows with zero bytes, which were left out, and how many bytes. */
  zeroRows: number;
  firstZeroLine: number;
  zeros: number;
  /** Line of the header of another table, at which reading ends. */
  otherTableLine: number;
  /** Unit text glued to a column's numbers. */
  readonly gluedUnits: string[];
  /** How many cells of each kind a column held, plain numbers not counted. */
  readonly cellKinds: Map<Cell['kind'], number>[];
};

export function noNews(width: number): RowNews {
  return {
    rowsSkipped: 0,
    firstSkippedLine: 0,
    rowsWide: 0,
    firstWideLine: 0,
    headersRepeated: 0,
    firstRepeatedLine: 0,
    cutLine: 0,
    paddedBytes: 0,
    zeroRows: 0,
    firstZeroLine: 0,
    zeros: 0,
    otherTableLine: 0,
    gluedUnits: Array.from({ length: width }, () => ''),
    cellKinds: Array.from({ length: width }, () => new Map()),
  };
}

/** So many cells of a column that are no plain numbers make it one that is read with patience. */
const oddCellsForPatience = 6;
/** A row with a smaller share of numbers among its filled cells is a remark, no sample. */
const leastNumbers = 0.3;

/** Takes rows that hold more than plain numbers: text, units, clocks, switches, repeated headers, remarks. */
export class OddRowReader {
  readonly #layout: Layout;
  readonly #store: ColumnStore;
  readonly #news: RowNews;
  readonly #patient: Uint8Array;
  readonly #oddCells: Uint32Array;
  readonly #positions: readonly (PositionColumn | null)[];
  readonly #letters: readonly (PositionColumn | null)[];

  /**
   * @param patient  set to 1 for a column that keeps holding other than plain numbers
   * @param mapping  corrections by hand
   */
  constructor(
    layout: Layout,
    store: ColumnStore,
    news: RowNews,
    patient: Uint8Array,
    mapping: readonly ColumnMapping[],
  ) {
    this.#positions = layout.names.map((name) => positionColumn(name, mapping));
    this.#letters = layout.names.map((_, c) => letterColumn(layout.names, c, mapping));
    this.#layout = layout;
    this.#store = store;
    this.#news = news;
    this.#patient = patient;
    this.#oddCells = new Uint32Array(patient.length);
  }

  /** Reads one cell of a column and counts its kind. */
  cell(text: string, column: number): Cell {
    const cell = this.#read(text, column);
    this.#count(cell, column);
    return cell;
  }

  /** `52:30:06` is a time of day but in a column of positions. */
  #read(text: string, column: number): Cell {
    const position = this.#positions[column];
    const letters = this.#letters[column];
    const cell =
      (position ? positionCell(text, position.isRomance) : null) ??
      (letters ? halfCell(text, letters.isRomance) : null);
    return cell ?? readCell(text, this.#layout.decimal);
  }

  /** Adds a row to the store, which must have room, or leaves it out and says so in the news. */
  take(cells: readonly string[], line: number, isEnd: boolean): void {
    if (cells.every((c) => c.trim() === '')) return;
    const { headerRows, decimal, columns, delimiter } = this.#layout;
    const news = this.#news;
    const store = this.#store;
    if (headerRows.some((header) => isSameRow(header, cells))) {
      if (news.headersRepeated++ === 0) news.firstRepeatedLine = line;
      return;
    }
    if (isOtherHeader(cells, decimal)) {
      news.otherTableLine = line;
      return;
    }
    let filled = 0;
    let numbers = 0;
    const seen: Cell[] = [];
    for (let c = 0; c < store.width; c++) {
      const cell = this.#read(cells[c] ?? '', c);
      store.put(c, cell.value, cell.flag);
      seen.push(cell);
      if (cell.kind !== 'missing') filled++;
      if (!Number.isNaN(cell.value)) numbers++;
    }
    const isShort = cells.length < columns && store.width > 1;
    // The last line of a log that lost its power: its last number may have lost digits.
    if (isEnd && isShort && news.cutLine !== 0) {
      news.cutLine = line;
      return;
    }
    const isUntold = delimiter === ' ' && isUnevenByBlanks(cells, columns, decimal);
    if (
      isUntold ||
      numbers === 0 ||
      numbers < leastNumbers * filled ||
      (isShort && cells.length < columns / 2)
    ) {
      if (news.rowsSkipped++ === 0) news.firstSkippedLine = line;
      return;
    }
    if (delimiter !== ' ' && isShifted(cells, seen, this.#layout)) {
      if (news.rowsWide++ === 0) news.firstWideLine = line;
      return;
    }
    seen.forEach((cell, c) => {
      this.#count(cell, c);
      this.#noticeOdd(cell, cells[c] ?? '', c);
    });
    store.rows++;
  }

  #count(cell: Cell, column: number): void {
    const { gluedUnits, cellKinds } = this.#news;
    if (cell.unit !== '' && gluedUnits[column] === '') gluedUnits[column] = cell.unit;
    const counts = cellKinds[column];
    if (cell.kind !== 'missing') counts?.set(cell.kind, (counts.get(cell.kind) ?? 0) + 1);
  }

  /** A column that keeps holding more than plain numbers is read cell by cell from then on. */
  #noticeOdd(cell: Cell, text: string, column: number): void {
    const odd = this.#oddCells;
    const isPlain =
      text.trim() === '' || (cell.kind === 'number' && cell.unit === '' && /^[-+\d.]+$/.test(text));
    if (isPlain || column >= odd.length) return;
    odd[column] = (odd[column] ?? 0) + 1;
    if ((odd[column] ?? 0) >= oddCellsForPatience) this.#patient[column] = 1;
  }
}

/**
 * Whether blanks part a row into fewer cells than there are columns, or into more numbers: nobody can tell then which
 * number belongs to which column.
 */
function isUnevenByBlanks(cells: readonly string[], columns: number, decimal: Layout['decimal']): boolean {
  return cells.length < columns || cells.slice(columns).some((c) => readCell(c, decimal).kind === 'number');
}

/**
 * Whether more cells than the table has columns hide which number belongs to which, as an unquoted `12,5` does between
 * commas. Empty cells and a remark behind a whole row leave no doubt.
 */
function isShifted(cells: readonly string[], seen: readonly Cell[], layout: Layout): boolean {
  const { columns, filledColumns, decimal, cellKinds } = layout;
  if (cells.length <= columns) return false;
  const behind = cells.slice(filledColumns).map((c) => readCell(c, decimal).kind);
  if (behind.every((kind) => kind === 'missing')) return false;
  // The text of the last column is no remark where a number stands in that column.
  return (
    behind.some((kind) => kind !== 'missing' && kind !== 'text') ||
    seen.slice(0, filledColumns).some((cell, c) => cellKinds[c] === 'text' && cell.kind === 'number')
  );
}

/** Three names that the dictionary knows and no number: the header of a table with other columns. */
function isOtherHeader(cells: readonly string[], decimal: Layout['decimal']): boolean {
  const filled = cells.filter((c) => c.trim() !== '');
  // `2000 rpm` and `90 km/h` are numbers, though their units are words of a header.
  if (filled.length < 3 || filled.some((c) => readCell(c, decimal).kind === 'number')) return false;
  const known = filled.filter((c) => matchName(headerParts(c).name).length > 0).length;
  return known >= 3 && known >= 0.5 * filled.length;
}

function isSameRow(a: readonly string[], b: readonly string[]): boolean {
  const n = Math.max(a.length, b.length);
  for (let i = 0; i < n; i++) if ((a[i] ?? '').trim() !== (b[i] ?? '').trim()) return false;
  return true;
}
