const blank = 32;

export type BlankedZeros = {
  /** The same bytes, or a copy in which lines that held zeros hold blanks. */
  readonly bytes: Uint8Array;
  /** Lines that held zeros, and the bytes of these lines that were zeros. */
  readonly rows: number;
  readonly zeros: number;
  /** Line of the first, counted from 0; -1 where there is none. */
  readonly firstLine: number;
};

/** So many rows with zeros are a power cut or two; more, and more than this share of all rows, are another damage. */
const fewRows = 8;
const fewShare = 0.02;

/** Whether zeros fill so much that the file is no log any more. */
export function isMostlyZeros(zeroRows: number, zeros: number, rows: number, size: number): boolean {
  return zeros > size / 2 || zeroRows > Math.max(fewRows, fewShare * rows);
}

/**
 * Blanks out every line that holds a zero byte: a logger that lost its power leaves a block of them, and what stands
 * beside them in the line is the rest of some row.
 */
export function withoutZeroLines(bytes: Uint8Array): BlankedZeros {
  let at = bytes.indexOf(0);
  if (at < 0) return { bytes, rows: 0, zeros: 0, firstLine: -1 };
  const blanked = bytes.slice();
  let rows = 0;
  let zeros = 0;
  const first = at;
  while (at >= 0) {
    let from = at;
    while (from > 0 && !isEnd(bytes[from - 1])) from--;
    let to = at;
    while (to < bytes.length && !isEnd(bytes[to])) if (bytes[to++] === 0) zeros++;
    blanked.fill(blank, from, to);
    rows++;
    at = bytes.indexOf(0, to);
  }
  let firstLine = 0;
  for (let i = 0; i < first; i++)
    if (bytes[i] === 10 || (bytes[i] === 13 && bytes[i + 1] !== 10)) firstLine++;
  return { bytes: blanked, rows, zeros, firstLine };
}

function isEnd(b: number | undefined): boolean {
  return b === 10 || b === 13;
}
