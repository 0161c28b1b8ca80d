import { fail, ok, type Problem, type Result } from '../../result/index.ts';
import { decodeText, type Encoding, findEncoding, wideToUtf8 } from './encoding.ts';
import { encodingByWords } from './encoding-by-words.ts';
import { findLayout, type Layout } from './layout.ts';
import { sideTable } from './lies-on-side.ts';
import { linesIn, longestOf, offsetOfLine } from './line-ends.ts';
import { otherFileOf, otherTextOf } from './not-a-log.ts';
import { valueTable } from './value-per-row.ts';
import { isMostlyZeros, withoutZeroLines } from './zero-rows.ts';

/** Everything is decided on so many bytes at the start. */
export const headSize = 256 * 1024;
/** A line longer than this is no row of a log. */
export const longestLine = 1 << 20;
const mostColumns = 2000;

/** Encoding and layout of a file, and its bytes from the first row of data on. */
export type SettledTable = {
  readonly encoding: Encoding;
  /** Makes UTF-8 of further chunks where a character may have two bytes; null where it has one. */
  readonly narrow: ((chunk: Uint8Array, isLast: boolean) => Uint8Array) | null;
  readonly layout: Layout;
  readonly body: Uint8Array;
  /** Bytes of a row, line end and all, in the middle. */
  readonly rowLength: number;
};

/**
 * Settles encoding and layout of a file from its head.
 *
 * @param file   name for problems
 * @param start  all bytes that are there so far: the head or more, or all of a shorter file
 * @param isAll  no more will come
 *
 * Errors: log/empty, log/not-a-table, log/null-bytes, log/line-too-long, log/only-text, log/on-its-side,
 *         log/value-per-row,
 *         log/too-many-columns.
 */
export function settleTable(file: string, start: Uint8Array, isAll: boolean): Result<SettledTable> {
  const says = (problem: Problem, line?: number) =>
    fail({ ...problem, where: line === undefined ? { file } : { file, line } });
  if (start.every(isBlankByte)) return says({ code: 'log/empty', facts: { size: start.length } });
  const first = start.subarray(0, headSize);
  const { encoding, markLength } = findEncoding(first) ?? {
    encoding: encodingByWords(first),
    markLength: 0,
  };
  // The second byte of a character of Shift_JIS may be the very byte of a stroke that parts cells.
  const isWide = encoding === 'utf-16le' || encoding === 'utf-16be' || encoding === 'shift_jis';
  const narrow = isWide ? wideToUtf8(encoding) : null;
  const unmarked = start.subarray(markLength);
  const known = narrow ? narrow(unmarked, false) : unmarked;
  const head = known.subarray(0, headSize);
  const otherFile = otherFileOf(head);
  if (otherFile) return says({ code: 'log/not-a-table', facts: { found: otherFile } });
  const zero = head.indexOf(0);
  const isHoled = zero >= 0 && !head.subarray(zero).every((b) => b === 0);
  const whole = isHoled ? withoutZeroLines(head) : { bytes: head, rows: 0, zeros: 0, firstLine: -1 };
  if (isHoled && isMostlyZeros(whole.rows, whole.zeros, linesIn(head, 0, head.length), head.length))
    return says({ code: 'log/null-bytes', facts: {} }, whole.firstLine + 1);
  const text = decodeText(whole.bytes, narrow ? 'utf-8' : encoding);
  const otherText = otherTextOf(text);
  if (otherText) return says({ code: 'log/not-a-table', facts: { found: otherText } });
  const isWhole = isAll && known.length <= headSize;
  const end = isWhole ? text.length : Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r')) + 1;
  if (end === 0 || longestOf(text) > longestLine / 2)
    return says({ code: 'log/line-too-long', facts: { length: known.length, limit: longestLine } }, 1);
  const layout = findLayout(text.slice(0, end));
  if (!layout) return says({ code: 'log/only-text', facts: { linesRead: linesIn(head, 0, head.length) } });
  const side = sideTable(layout, text);
  if (side) return says({ code: 'log/on-its-side', facts: side }, layout.firstDataLine);
  const values = valueTable(layout, text);
  if (values)
    return says({ code: 'log/value-per-row', facts: { channels: values.channels } }, layout.firstDataLine);
  const columns = layout.names.length;
  if (columns > mostColumns)
    return says(
      { code: 'log/too-many-columns', facts: { columns, limit: mostColumns } },
      layout.firstDataLine,
    );
  const bodyFrom = offsetOfLine(head, layout.firstDataLine);
  const bodyLines = Math.max(1, linesIn(head, bodyFrom, head.length));
  const rowLength = Math.max(2, (head.length - bodyFrom) / bodyLines);
  return ok({ encoding, narrow, layout, body: known.subarray(bodyFrom), rowLength });
}

function isBlankByte(b: number): boolean {
  return b === 32 || (b >= 9 && b <= 13) || b === 0xef || b === 0xbb || b === 0xbf;
}
