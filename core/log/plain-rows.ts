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
  readonly #delimiter: number;
  readonly #decimal: number;
  readonly #cells: number;
  readonly #isBlankParted: boolean;

  constructor(style: PlainStyle) {
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
    let { rows } = store;
    let lines = 0;
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
      for (let c = 0; c < cells; c++) {
        b = bytes[p] ?? lf;
        while (b === blank || (b === tab && delimiter !== tab)) b = bytes[++p] ?? lf;
        const start = p;
        let isNegative = false;
        if (b === 45) {
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
        if (b === decimal) {
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
        let isMissing = false;
        if (digits === 0) {
          // A sign or a point alone is no number.
          if (p !== start || isBlankParted) {
            p = rowStart;
            stop = 'odd';
            break reading;
          }
          isMissing = true;
          value = Number.NaN;
        } else if (digits > 15 || b === 101 || b === 69) {
          p = endOfNumber(bytes, p);
          value = numberOf(bytes, start, p, decimal);
          if (!Number.isFinite(value)) {
            p = rowStart;
            stop = 'odd';
            break reading;
          }
          b = bytes[p] ?? lf;
        } else if (isNegative) value = -value;
        if (b === blank || (b === tab && delimiter !== tab)) {
          while (b === blank || b === tab) b = bytes[++p] ?? lf;
          if (isBlankParted && c < last && b !== lf && b !== cr) {
            (columns[c] as Float64Array)[rows] = value;
            const f = flags[c];
            if (f) f[rows] = 0;
            continue;
          }
        }
        if (c < last ? b !== delimiter : b !== lf && b !== cr) {
          p = rowStart;
          stop = 'odd';
          break reading;
        }
        (columns[c] as Float64Array)[rows] = value;
        if (isMissing) store.flagsOf(c)[rows] = missingFlag;
        else {
          const f = flags[c];
          if (f) f[rows] = 0;
        }
        p++;
      }
      if (b === cr && bytes[p] === lf) p++;
      for (let c = cells; c < width; c++) {
        (columns[c] as Float64Array)[rows] = Number.NaN;
        store.flagsOf(c)[rows] = missingFlag;
      }
      rows++;
      lines++;
    }
    store.rows = rows;
    this.position = p;
    this.lines = lines;
    return stop;
  }
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
