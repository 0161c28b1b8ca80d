import type { Cell } from './cell.ts';
import type { ColumnStore } from './column-store.ts';
import { missingFlag } from './column-store.ts';

/** How the plain rows of a file are written. */
export type PlainStyle = {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  /** Cells of a row; a row with more or fewer is not plain. */
  readonly cells: number;
};

/** Where reading stopped: at the end, for want of room in the store, or at the start of a row that isn't plain. */
export type PlainStop = 'end' | 'full' | 'odd';

const lf = 10;
const cr = 13;
const blank = 32;
const tab = 9;
const quote = 34;
const minus = 45;
/** More digits than these less one take the longer way. */
const tooLong = 10;
const powersOfTen = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);

/**
 * Reads rows of plain numbers straight from bytes into columns, with the very double that Number(text) gives.
 *
 * Fifteen digits fit a double without loss, and so does every power of ten up to 22, so one division rounds once,
 * as the standard asks; a longer or exponential number takes Number itself. An empty cell is NaN and flagged.
 *
 * Source: Clinger, How to Read Floating Point Numbers Accurately, PLDI 1990 (the fast case).
 */
export class PlainRowReader {
  /** Set by `read`: byte after the last row that was taken, and lines passed, blank ones too. */
  position = 0;
  lines = 0;
  /**
   * Columns whose cells may be other than numbers, a time of day or a remark say: 1 for those. The rest of their
   * rows is still read at full speed.
   */
  readonly patient: Uint8Array;
  readonly #readCell: (text: string, column: number) => Cell;
  readonly #toText: (bytes: Uint8Array) => string;
  readonly #delimiter: number;
  readonly #decimal: number;
  readonly #cells: number;
  readonly #isBlankParted: boolean;

  /**
   * @param readCell  reads a cell of a patient column
   * @param toText    bytes to text in the file's encoding
   */
  constructor(
    style: PlainStyle,
    readCell: (text: string, column: number) => Cell,
    toText: (bytes: Uint8Array) => string,
  ) {
    this.patient = new Uint8Array(style.cells);
    this.#readCell = readCell;
    this.#toText = toText;
    this.#delimiter = style.delimiter.charCodeAt(0);
    this.#decimal = style.decimal.charCodeAt(0);
    this.#cells = style.cells;
    this.#isBlankParted = style.delimiter === ' ';
  }

  /**
   * Takes plain rows from `from` on. `bytes[to - 1]` must end a line, so that no bound has to be checked within.
   */
  read(bytes: Uint8Array, from: number, to: number, store: ColumnStore): PlainStop {
    const { columns, flags, width } = store;
    const delimiter = this.#delimiter;
    const decimal = this.#decimal;
    const cells = this.#cells;
    const last = cells - 1;
    const isBlankParted = this.#isBlankParted;
    const patient = this.patient;
    // Where both are commas only quotes tell a decimal comma from the next cell.
    const bareDecimal = decimal === delimiter ? -1 : decimal;
    // Bytes less 48, as the digits are.
    const pointDigit = bareDecimal - 48;
    const delimiterDigit = delimiter - 48;
    const endDigit = lf - 48;
    const returnDigit = cr - 48;
    let { rows } = store;
    let lines = 0;
    let isFlagged = flags.some((f) => f !== null);
    let p = from;
    let stop: PlainStop = 'end';
    reading: while (p < to) {
      const rowStart = p;
      let b = bytes[p] ?? lf;
      if (b === lf || b === cr) {
        p += b === cr && bytes[p + 1] === lf ? 2 : 1;
        lines++;
        continue;
      }
      if (rows >= store.capacity) {
        stop = 'full';
        break;
      }
      let numbers = cells;
      for (let c = 0; c < cells; c++) {
        const cellStart = p;
        b = bytes[p] ?? lf;
        // Nearly every cell is up to nine digits with a point among them or none: whole numbers carry them exactly.
        // Written out with few branches, as half of the reading is spent here: a byte that is no digit is above nine
        // as an unsigned number, and a single decimal needs no loop.
        let q = p;
        let n = b;
        if (b === minus) n = bytes[++q] ?? lf;
        let whole = (n - 48) | 0;
        if (whole >>> 0 <= 9) {
          const wholeFrom = q;
          n = (bytes[++q] ?? lf) - 48;
          while (n >>> 0 <= 9) {
            whole = (Math.imul(whole, 10) + n) | 0;
            n = (bytes[++q] ?? lf) - 48;
          }
          let length = q - wholeFrom;
          let size = whole;
          if (n === pointDigit) {
            n = (bytes[++q] ?? lf) - 48;
            if (n >>> 0 > 9) length = tooLong;
            else {
              whole = (Math.imul(whole, 10) + n) | 0;
              n = (bytes[++q] ?? lf) - 48;
              if (n >>> 0 > 9) {
                length++;
                size = whole / 10;
              } else {
                const fractionFrom = q - 1;
                while (n >>> 0 <= 9) {
                  whole = (Math.imul(whole, 10) + n) | 0;
                  n = (bytes[++q] ?? lf) - 48;
                }
                const fraction = q - fractionFrom;
                length += fraction;
                size = whole / (powersOfTen[fraction] as number);
              }
            }
          }
          const isClosed =
            n === delimiterDigit ? c < last : c === last && (n === endDigit || n === returnDigit);
          if (isClosed && length < tooLong) {
            (columns[c] as Float64Array)[rows] = b === minus ? -size : size;
            if (isFlagged) {
              const f = flags[c];
              if (f) f[rows] = 0;
            }
            p = q + 1;
            b = n + 48;
            continue;
          }
        }
        while (b === blank || (b === tab && delimiter !== tab)) b = bytes[++p] ?? lf;
        const isQuoted = b === quote;
        if (isQuoted) b = bytes[++p] ?? lf;
        const start = p;
        const point = isQuoted ? decimal : bareDecimal;
        let isNegative = false;
        if (b === minus) {
          isNegative = true;
          b = bytes[++p] ?? lf;
        } else if (b === 43) b = bytes[++p] ?? lf;
        const digitsFrom = p;
        let value = 0;
        let d = b - 48;
        while (d >= 0 && d <= 9) {
          value = value * 10 + d;
          b = bytes[++p] ?? lf;
          d = b - 48;
        }
        let digits = p - digitsFrom;
        if (b === point) {
          b = bytes[++p] ?? lf;
          const fractionFrom = p;
          d = b - 48;
          while (d >= 0 && d <= 9) {
            value = value * 10 + d;
            b = bytes[++p] ?? lf;
            d = b - 48;
          }
          const fraction = p - fractionFrom;
          digits += fraction;
          if (fraction > 0 && digits <= 15) value /= powersOfTen[fraction] ?? 1;
        }
        let flag = 0;
        // A sign or a point alone is no number.
        let isPlain = digits > 0 || (p === start && !isBlankParted);
        if (digits === 0) {
          flag = missingFlag;
          value = Number.NaN;
        } else if (digits > 15 || b === 101 || b === 69) {
          p = endOfNumber(bytes, p);
          value = numberOf(bytes, start, p, decimal);
          isPlain = Number.isFinite(value);
          b = bytes[p] ?? lf;
        } else if (isNegative) value = -value;
        if (isQuoted) {
          isPlain &&= b === quote;
          b = bytes[++p] ?? lf;
        }
        let isParted = false;
        while (b === blank || (b === tab && delimiter !== tab)) {
          isParted = isBlankParted;
          b = bytes[++p] ?? lf;
        }
        if (c === last) isPlain &&= b === lf || b === cr;
        else if (isParted) isPlain &&= b !== lf && b !== cr;
        else isPlain &&= b === delimiter;
        if (!isPlain) {
          const end = patient[c] ? endOfCell(bytes, cellStart, delimiter) : -1;
          b = bytes[end] ?? 0;
          if (end < 0 || isBlankParted || (c === last ? b === delimiter : b !== delimiter)) {
            p = rowStart;
            stop = 'odd';
            break reading;
          }
          const cell = this.#cellOf(bytes, cellStart, end, c);
          value = cell.value;
          flag = cell.flag;
          p = end;
        }
        (columns[c] as Float64Array)[rows] = value;
        if (flag !== 0) numbers--;
        const f = flags[c];
        if (f) f[rows] = flag;
        else if (flag !== 0) {
          store.flagsOf(c)[rows] = flag;
          isFlagged = true;
        }
        if (!isParted) p++;
      }
      if (numbers === 0) {
        if (holdsMark(flags, cells, rows)) {
          // A header that comes back, or a remark.
          p = rowStart;
          stop = 'odd';
          break;
        }
        // Delimiters and nothing between them are a blank line: the next row is written over it.
        if (b === cr && bytes[p] === lf) p++;
        lines++;
        continue;
      }
      if (b === cr && bytes[p] === lf) p++;
      lines++;
      for (let c = cells; c < width; c++) {
        (columns[c] as Float64Array)[rows] = Number.NaN;
        store.flagsOf(c)[rows] = missingFlag;
        isFlagged = true;
      }
      rows++;
    }
    store.rows = rows;
    this.position = p;
    this.lines = lines;
    return stop;
  }

  #cellOf(bytes: Uint8Array, from: number, to: number, column: number): Cell {
    let text = '';
    for (let i = from; i < to; i++) {
      const b = bytes[i] ?? 0;
      if (b >= 128) return this.#readCell(this.#toText(bytes.subarray(from, to)), column);
      text += String.fromCharCode(b);
    }
    return this.#readCell(text, column);
  }
}

/** Byte after a cell without quotes, -1 where it holds a quote or a zero and the tokeniser has to look. */
function endOfCell(bytes: Uint8Array, from: number, delimiter: number): number {
  for (let p = from; p < bytes.length; p++) {
    const b = bytes[p];
    if (b === delimiter || b === lf || b === cr) return p;
    if (b === quote || b === 0) return -1;
  }
  return -1;
}

/** End of digits and an exponent, from a byte after the mantissa's last digit. */
function endOfNumber(bytes: Uint8Array, from: number): number {
  let p = from;
  const b = bytes[p];
  if (b !== 101 && b !== 69) return p;
  p++;
  if (bytes[p] === 43 || bytes[p] === 45) p++;
  const digitsFrom = p;
  while ((bytes[p] ?? 0) >= 48 && (bytes[p] ?? 0) <= 57) p++;
  // `12e` is no number: stopping before the letter makes the row odd.
  return p === digitsFrom ? from : p;
}

function numberOf(bytes: Uint8Array, from: number, to: number, decimal: number): number {
  let text = '';
  for (let i = from; i < to; i++) text += String.fromCharCode(bytes[i] === decimal ? 46 : (bytes[i] ?? 0));
  return Number(text);
}

/**
 * Whether a row without a number holds anything at all. A function of its own: what a closure within the loop takes in
 * the engine keeps in memory, and the loop is a tenth slower.
 */
function holdsMark(flags: readonly (Uint8Array | null)[], cells: number, row: number): boolean {
  return flags.some((flag, c) => c < cells && flag?.[row] !== missingFlag);
}
