import { ColumnStore } from './column-store.ts';
import { rowsHeld_bytes } from './cut-cell.ts';
import { PlainRowReader, type PlainStyle } from './plain-rows.ts';

/** How the rows of a file are written, and how many columns they fill. */
export type BlockStyle = PlainStyle & { readonly width: number };

/** Rows that were read apart from those before them. */
export type RowBlock = {
  readonly rows: number;
  /** Lines passed, blank ones too. */
  readonly lines: number;
  /** Bytes that were read: up to the first row that is not plain. */
  readonly size_bytes: number;
  /** By column; the first `rows` count. */
  readonly columns: readonly Float64Array[];
  readonly flags: readonly (Uint8Array | null)[];
  /** The last of those bytes. */
  readonly tail: Uint8Array;
};

/** Numbers that a block needs room for, whatever its rows hold: a row has a byte at least for each cell and one more. */
export function roomOfBlock({ cells, width }: BlockStyle, size_bytes: number): number {
  return width * (64 + Math.ceil(size_bytes / (cells + 1)));
}

/** Reads rows of plain numbers apart from those before them, as where two workers share a file. */
export class BlockReader {
  readonly #width: number;
  readonly #plain: PlainRowReader;

  constructor(style: BlockStyle) {
    this.#width = style.width;
    // No column is patient: what is no number stops the reading before its row.
    const unread = (): never => {
      throw new Error('a cell was read that is no number');
    };
    this.#plain = new PlainRowReader(style, unread, unread);
  }

  /**
   * Takes rows up to the first one that is not plain.
   *
   * @param bytes    whole rows: the last byte is a line feed
   * @param numbers  room for the columns, one after another (roomOfBlock)
   */
  read(bytes: Uint8Array, numbers: Float64Array): RowBlock {
    let taken = 0;
    const next = (length: number) => {
      taken += length;
      return numbers.subarray(taken - length, taken);
    };
    const store = new ColumnStore(this.#width, Math.floor(numbers.length / this.#width), next);
    this.#plain.read(bytes, 0, bytes.length, store);
    const { position, lines } = this.#plain;
    const { rows, columns, flags } = store;
    return {
      rows,
      lines,
      size_bytes: position,
      columns,
      flags: flags.map((f) => f?.slice(0, rows) ?? null),
      tail: bytes.slice(Math.max(0, position - rowsHeld_bytes), position),
    };
  }
}
