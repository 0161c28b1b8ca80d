/** Byte after the first line end, -1 where there is none; a return at the very end may be half of a pair. */
export function firstLineEnd(bytes: Uint8Array): number {
  const feed = bytes.indexOf(10);
  const back = (feed < 0 ? bytes : bytes.subarray(0, feed)).indexOf(13);
  if (back >= 0 && back + 1 < bytes.length && bytes[back + 1] !== 10) return back + 1;
  return feed < 0 ? -1 : feed + 1;
}

/** Byte after the last line end that is sure, 0 where there is none. */
export function lastLineEnd(bytes: Uint8Array): number {
  const feed = bytes.lastIndexOf(10);
  // Files with bare returns are rare: they are looked for only where no line feed is seen.
  if (feed >= 0) return feed + 1;
  return bytes.length < 2 ? 0 : bytes.lastIndexOf(13, bytes.length - 2) + 1;
}

/** One array after the other; the second itself where the first is empty. */
export function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b;
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** Line ends in a range: LF, CR LF or CR. */
export function linesIn(bytes: Uint8Array, from: number, to: number): number {
  let lines = 0;
  for (let i = from; i < to; i++) {
    const b = bytes[i];
    if (b === 10 || (b === 13 && bytes[i + 1] !== 10)) lines++;
  }
  return lines;
}

/** Byte at which a line begins, counted from 1. */
export function offsetOfLine(bytes: Uint8Array, line: number): number {
  let at = 1;
  let i = 0;
  for (; i < bytes.length && at < line; i++) {
    const b = bytes[i];
    if (b === 10 || (b === 13 && bytes[i + 1] !== 10)) at++;
  }
  return i;
}

/** Length of the longest line of a text. */
export function longestOf(text: string): number {
  let longest = 0;
  let from = 0;
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', from)) {
    longest = Math.max(longest, i - from);
    from = i + 1;
  }
  return Math.max(longest, text.length - from);
}

/**
 * A block of about `lines` lines that no quoted cell crosses. A quote that stays open for long is a sign of its
 * own, an inch say, or the file was cut within a cell: the block then ends before its line, which is taken unquoted by
 * itself.
 */
export function blockOf(
  bytes: Uint8Array,
  from: number,
  to: number,
  lines: number,
): { end: number; isQuoted: boolean } {
  const farthest = Math.min(to, from + (1 << 16));
  let isOpen = false;
  let seen = 0;
  let firstEnd = to;
  let lastClosed = from;
  const beforeOpen = () =>
    lastClosed > from ? { end: lastClosed, isQuoted: true } : { end: firstEnd, isQuoted: false };
  for (let i = from; i < to; i++) {
    const b = bytes[i];
    if (b === 34) isOpen = !isOpen;
    else if (b === 10 || (b === 13 && bytes[i + 1] !== 10)) {
      seen++;
      if (seen === 1) firstEnd = i + 1;
      if (!isOpen && (seen >= lines || i >= farthest)) return { end: i + 1, isQuoted: true };
      if (!isOpen) lastClosed = i + 1;
      if (isOpen && (seen >= lines + 50 || i > farthest)) return beforeOpen();
    }
  }
  return isOpen ? beforeOpen() : { end: to, isQuoted: true };
}
