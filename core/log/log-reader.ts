import { fail, type Problem, type Result } from '../result/index.ts';
import type { Log } from './channel.ts';
import type { ColumnMapping } from './columns/column-mapping.ts';
import { finishLog } from './finish-log.ts';
import { RewritingReader } from './rewriting-reader.ts';
import { ColumnStore, ownRoom, sharedRoom } from './table/column-store.ts';
import { isLastCellCut, rowsHeld_bytes } from './table/cut-cell.ts';
import { decodeText, type Encoding } from './table/encoding.ts';
import type { Layout } from './table/layout.ts';
import { blockOf, firstLineEnd, joined, lastLineEnd, linesIn } from './table/line-ends.ts';
import { otherFileOf } from './table/not-a-log.ts';
import { noNews, OddRowReader, type RowNews } from './table/odd-rows.ts';
import { PlainRowReader } from './table/plain-rows.ts';
import type { BlockStyle, RowBlock } from './table/row-block.ts';
import { headSize, longestLine, settleTable } from './table/settle-table.ts';
import { tokenise } from './table/tokenise.ts';
import { isMostlyZeros, withoutZeroLines } from './table/zero-rows.ts';

export type LogReaderOptions = {
  /** Name for the log and for problems. */
  readonly file: string;
  /** Size of the whole file in bytes where known: room is then made once. */
  readonly size?: number;
  /** Puts the columns of numbers into memory that several workers may read at once. */
  readonly isShared?: boolean;
  readonly mapping?: readonly ColumnMapping[];
  /** Rows per second, for a log without a time column. */
  readonly sampleRate_Hz?: number;
};

const fewestRows = 2;
/**
 * The first rows are read in so many small pieces: an engine compiles a function better that has come to its end some
 * times than one that it first sees in the midst of a megabyte (a sixth of the reading of 100 MB, measured).
 */
const smallPieces = 64;
const smallPiece = 4096;
/** Rows handed to the tokeniser at once while rows stay irregular. */
const mostPatience = 4096;

/**
 * Reads a log chunk by chunk. `push` returns a problem as soon as one is certain; reading then ends. It holds
 * nothing of the chunk, which may be filled anew. `finish` gives the log or the problems.
 */
export type LogReader = {
  push(chunk: Uint8Array): Problem | null;
  /**
   * How the rows to come are written, once that is settled: whole ones may then be read apart (BlockReader) and
   * given to pushBlock. Null before, and where bytes are no characters.
   */
  blockStyle(): BlockStyle | null;
  /** Takes rows that were read apart, in their place: what was pushed before ends with a line feed. */
  pushBlock(block: RowBlock): Problem | null;
  finish(): Result<Log>;
};

/** A reader for one file; see LogReader. Heavy on big files: run it in a worker. */
export function createLogReader(options: LogReaderOptions): LogReader {
  return new RewritingReader(options, (plain) => new Reader(plain));
}

const nothing = new Uint8Array(0);

class Reader implements LogReader {
  readonly #options: LogReaderOptions;
  #pending: Uint8Array = nothing;
  /** The rows read last. */
  #held: Uint8Array = nothing;
  #size = 0;
  #encoding: Encoding = 'utf-8';
  #narrow: ((chunk: Uint8Array, isLast: boolean) => Uint8Array) | null = null;
  #hasStarted = false;
  #layout: Layout | null = null;
  #plain: PlainRowReader | null = null;
  #store = new ColumnStore(0, 0);
  #line = 1;
  #patience = 1;
  #pieces = 0;
  #odd: OddRowReader | null = null;
  #problem: Problem | null = null;
  #news: RowNews = noNews(0);

  constructor(options: LogReaderOptions) {
    this.#options = options;
  }

  push(chunk: Uint8Array): Problem | null {
    if (this.#isOver()) return this.#problem;
    this.#size += chunk.length;
    const bytes = this.#narrow ? this.#narrow(chunk, false) : chunk;
    if (this.#hasStarted) {
      this.#readOn(bytes);
      return this.#problem;
    }
    const known = joined(this.#pending, bytes);
    // The chunk is the caller's, who may fill it anew.
    this.#pending = known === chunk ? known.slice() : known;
    if (known.length < headSize) return null;
    if (known.length < longestLine && firstLineEnd(known) < 0) {
      const found = otherFileOf(known.subarray(0, headSize));
      if (found) this.#problem = this.#says({ code: 'log/not-a-table', facts: { found } });
      return this.#problem;
    }
    this.#start(false);
    if (!this.#problem) {
      const rest = this.#pending;
      this.#pending = nothing;
      this.#readOn(rest);
    }
    return this.#problem;
  }

  blockStyle(): BlockStyle | null {
    const layout = this.#layout;
    if (!layout || this.#narrow || this.#isOver()) return null;
    const { delimiter, decimal, columns: cells, names } = layout;
    return { delimiter, decimal, cells, width: names.length };
  }

  pushBlock(block: RowBlock): Problem | null {
    if (this.#isOver()) return this.#problem;
    if (this.#pending.length > 0) throw new Error('rows were read apart within a row');
    this.#size += block.size_bytes;
    while (this.#store.capacity - this.#store.rows < block.rows && !this.#problem) this.#grow();
    if (this.#problem || block.size_bytes === 0) return this.#problem;
    this.#store.append(block);
    this.#line += block.lines;
    this.#patience = 1;
    this.#hold(block.tail);
    return null;
  }

  finish(): Result<Log> {
    if (!this.#problem && !this.#hasStarted) this.#start(true);
    if (!this.#problem) {
      if (this.#narrow) this.#pending = joined(this.#pending, this.#narrow(nothing, true));
      this.#readRest();
    }
    const layout = this.#layout;
    if (this.#problem || !layout)
      return fail(this.#problem ?? this.#says({ code: 'log/empty', facts: { size: this.#size } }));
    const { zeroRows, zeros, firstZeroLine } = this.#news;
    if (isMostlyZeros(zeroRows, zeros, this.#store.rows, this.#size))
      return fail(this.#says({ code: 'log/null-bytes', facts: {} }, firstZeroLine));
    if (this.#store.rows < fewestRows)
      return fail(
        this.#says(
          { code: 'log/too-few-rows', facts: { rows: this.#store.rows, needed: fewestRows } },
          layout.firstDataLine,
        ),
      );
    return finishLog({
      file: this.#options.file,
      layout,
      encoding: this.#encoding,
      store: this.#store,
      news: this.#news,
      mapping: this.#options.mapping ?? [],
      sampleRate_Hz: this.#options.sampleRate_Hz ?? null,
    });
  }

  #says(problem: Problem, line?: number): Problem {
    const { file } = this.#options;
    return { ...problem, where: line === undefined ? { file } : { file, line } };
  }

  /** Settles encoding and layout from all that has been pushed so far. */
  #start(isAll: boolean): void {
    this.#hasStarted = true;
    const settled = settleTable(this.#options.file, this.#pending, isAll);
    if (!settled.ok) {
      this.#problem = settled.problems[0];
      return;
    }
    const { encoding, narrow, layout, body, rowLength } = settled.value;
    this.#encoding = encoding;
    this.#narrow = narrow;
    this.#layout = layout;
    this.#pending = body;
    this.#line = layout.firstDataLine;
    // Two bytes a character in UTF-16. A twentieth to spare costs no memory until it is written to.
    const isTwice = encoding === 'utf-16le' || encoding === 'utf-16be';
    const total = (this.#options.size ?? 0) / (isTwice ? 2 : 1);
    const expected = total > 0 ? (total / rowLength) * 1.05 + 64 : 65_536;
    const width = layout.names.length;
    const rows = Math.min(expected, 4e9 / Math.max(1, width));
    this.#store = new ColumnStore(width, rows, this.#options.isShared ? sharedRoom : ownRoom);
    this.#news = noNews(width);
    this.#plain = new PlainRowReader(
      { delimiter: layout.delimiter, decimal: layout.decimal, cells: layout.columns },
      (text, column) => odd.cell(text, column),
      (bytes) => this.#text(bytes),
    );
    const odd = new OddRowReader(
      layout,
      this.#store,
      this.#news,
      this.#plain.patient,
      this.#options.mapping ?? [],
    );
    this.#odd = odd;
  }

  #text(bytes: Uint8Array): string {
    return decodeText(bytes, this.#narrow ? 'utf-8' : this.#encoding);
  }

  /** Reads the whole rows of what is pending and a chunk, and keeps the row that the chunk cuts. */
  #readOn(chunk: Uint8Array): void {
    let bytes = chunk;
    if (this.#pending.length > 0) {
      // Only the row that the chunks cut is copied.
      const end = firstLineEnd(chunk);
      if (end < 0) {
        this.#keep(joined(this.#pending, chunk));
        return;
      }
      const row = joined(this.#pending, chunk.subarray(0, end));
      const done = this.#readRows(row, row.length, false);
      this.#hold(row);
      if (done < row.length) bytes = joined(row.subarray(done), chunk.subarray(end));
      else bytes = chunk.subarray(end);
      this.#pending = nothing;
      if (this.#problem) return;
    }
    const done = this.#readRows(bytes, lastLineEnd(bytes), false);
    this.#hold(bytes.subarray(0, done));
    // A copy, so that a chunk of the caller's is not held.
    if (!this.#problem) this.#keep(bytes.slice(done));
  }

  #hold(rows: Uint8Array): void {
    const held = rows.length < rowsHeld_bytes ? joined(this.#held, rows) : rows;
    this.#held = held.slice(-rowsHeld_bytes);
  }

  #keep(rest: Uint8Array): void {
    this.#pending = rest;
    if (rest.length <= longestLine) return;
    if (rest.every((b) => b === 0)) {
      this.#news.paddedBytes += rest.length;
      this.#pending = nothing;
      return;
    }
    this.#problem = this.#says(
      { code: 'log/line-too-long', facts: { length: rest.length, limit: longestLine } },
      this.#line,
    );
  }

  /** Reads what is pending at the end of the file. */
  #readRest(): void {
    let bytes = this.#pending;
    if (bytes.length === 0 || this.#news.otherTableLine > 0) return;
    let end = bytes.length;
    while (end > 0 && bytes[end - 1] === 0) end--;
    this.#news.paddedBytes += bytes.length - end;
    const isCut = end > 0 && bytes[end - 1] !== 10 && bytes[end - 1] !== 13;
    if (isCut) this.#news.cutLine = -1;
    const tail = joined(this.#held, bytes.subarray(0, end));
    if (isCut && isLastCellCut(this.#text(tail), this.#layout?.delimiter ?? ' ')) {
      const rest = bytes.subarray(0, lastLineEnd(bytes.subarray(0, end)));
      this.#readRows(rest, rest.length, false);
      this.#news.cutLine = this.#line;
      return;
    }
    bytes = joined(bytes.subarray(0, end), Uint8Array.of(10));
    this.#readRows(bytes, bytes.length, true);
  }

  #readRows(bytes: Uint8Array, to: number, isLast: boolean): number {
    const plain = this.#plain;
    if (!plain) return to;
    let p = 0;
    while (p < to && !this.#isOver()) {
      const stop = plain.read(bytes, p, this.#pieceEnd(bytes, p, to), this.#store);
      if (plain.position > p) this.#patience = 1;
      p = plain.position;
      this.#line += plain.lines;
      if (stop === 'full') this.#grow();
      if (stop !== 'odd') continue;
      const block = blockOf(bytes, p, to, this.#patience);
      this.#patience = Math.min(mostPatience, this.#patience * 2);
      this.#readOddRows(bytes.subarray(p, block.end), block.isQuoted, isLast && block.end === to);
      p = block.end;
    }
    return p;
  }

  /** End of the rows to be read at once. */
  #pieceEnd(bytes: Uint8Array, from: number, to: number): number {
    if (this.#pieces >= smallPieces || to - from <= smallPiece) return to;
    this.#pieces++;
    const length = lastLineEnd(bytes.subarray(from, from + smallPiece));
    return length > 0 ? from + length : to;
  }

  #isOver(): boolean {
    return this.#problem !== null || this.#news.otherTableLine > 0;
  }

  #grow(): void {
    try {
      this.#store.grow();
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.#problem = this.#says({
        code: 'log/too-big',
        facts: { rows: this.#store.rows, columns: this.#store.width },
      });
    }
  }

  /** Rows that hold more than plain numbers: the general tokeniser and the patient cell reader. */
  #readOddRows(bytes: Uint8Array, isQuoted: boolean, isEnd: boolean): void {
    const layout = this.#layout;
    if (!layout) return;
    const whole = withoutZeroLines(bytes);
    if (whole.rows > 0) {
      const news = this.#news;
      if (news.zeroRows === 0) news.firstZeroLine = this.#line + whole.firstLine;
      news.zeroRows += whole.rows;
      news.zeros += whole.zeros;
    }
    const rows = tokenise(this.#text(whole.bytes), layout.delimiter, isQuoted, layout.fields);
    // The text ends with a line end, behind which the tokeniser sees one more, empty row.
    if (rows.at(-1)?.join('') === '') rows.pop();
    for (let i = 0; i < rows.length && !this.#isOver(); i++) {
      if (this.#store.rows >= this.#store.capacity) this.#grow();
      this.#odd?.take(rows[i] ?? [], this.#line + i, isEnd && i === rows.length - 1);
    }
    this.#line += linesIn(bytes, 0, bytes.length);
  }
}
