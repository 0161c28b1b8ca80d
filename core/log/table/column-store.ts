import { sampleFlag } from '../channel.ts';
import type { RowBlock } from './row-block.ts';

/** Makes the memory of so many numbers. */
export type Room = (length: number) => Float64Array;

export const ownRoom: Room = (length) => new Float64Array(length);
/** In memory that several workers may read at once. */
export const sharedRoom: Room = (length) => new Float64Array(new SharedArrayBuffer(8 * length));

/** Columns that grow row by row. A row counts once `rows` is raised; until then it may be written again. */
export class ColumnStore {
  readonly width: number;
  readonly #room: Room;
  readonly columns: Float64Array[];
  /** Made at a column's first flag, as most columns never need any. */
  readonly flags: (Uint8Array | null)[];
  rows = 0;
  capacity: number;

  constructor(width: number, expectedRows: number, room: Room = ownRoom) {
    this.width = width;
    this.#room = room;
    this.capacity = Math.max(64, Math.ceil(expectedRows));
    this.columns = Array.from({ length: width }, () => this.#room(this.capacity));
    this.flags = Array.from({ length: width }, () => null);
  }

  /** Room for one more row at least. */
  grow(): void {
    const capacity = Math.ceil(this.capacity * 1.5);
    for (let c = 0; c < this.width; c++) {
      const old = this.columns[c];
      if (!old) continue;
      const wider = this.#room(capacity);
      wider.set(old);
      this.columns[c] = wider;
      const flags = this.flags[c];
      if (flags) {
        const widerFlags = new Uint8Array(capacity);
        widerFlags.set(flags);
        this.flags[c] = widerFlags;
      }
    }
    this.capacity = capacity;
  }

  /** Flags of a column, made where there are none yet. */
  flagsOf(column: number): Uint8Array {
    const known = this.flags[column];
    if (known) return known;
    const made = new Uint8Array(this.capacity);
    this.flags[column] = made;
    return made;
  }

  /** Writes a cell of the row being read. */
  put(column: number, value: number, flag: number): void {
    const values = this.columns[column];
    if (!values) return;
    values[this.rows] = value;
    const flags = this.flags[column];
    if (flags) flags[this.rows] = flag;
    else if (flag !== 0) this.flagsOf(column)[this.rows] = flag;
  }

  /** Adds rows that were read elsewhere; there must be room for them. */
  append({ rows, columns, flags }: RowBlock): void {
    for (let c = 0; c < this.width; c++) {
      this.columns[c]?.set(columns[c]?.subarray(0, rows) ?? [], this.rows);
      const found = flags[c];
      // A row that did not count may have left flags behind.
      if (found) this.flagsOf(c).set(found.subarray(0, rows), this.rows);
      else this.flags[c]?.fill(0, this.rows, this.rows + rows);
    }
    this.rows += rows;
  }

  /**
   * The finished columns, cut to the rows read. The store is empty afterwards. A little unused room stays behind
   * a column, untouched and so without memory of its own: a copy of each would cost a tenth of the reading.
   */
  take(): { values: Float64Array; flags: Uint8Array }[] {
    const { rows } = this;
    const isSnug = this.capacity - rows <= rows / 8;
    // One for all columns without a flag: nobody writes to flags that say nothing.
    const noFlags = new Uint8Array(rows);
    return this.columns.map((values, c) => {
      const flags = this.flags[c];
      this.flags[c] = null;
      this.columns[c] = new Float64Array(0);
      return {
        values: isSnug ? values.subarray(0, rows) : values.slice(0, rows),
        flags: flags ? flags.slice(0, rows) : noFlags,
      };
    });
  }
}

/** Flag of a cell with nothing in it. */
export const missingFlag = sampleFlag.missing;
