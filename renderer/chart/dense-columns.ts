import type { LinePart } from './line-levels.ts';

/** Pixels of a canvas as words, with the box of a panel in them, the right and the bottom edge outside. */
export type PixelBox = {
  readonly pixels: Uint32Array;
  /** Pixels of a row. */
  readonly stride: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

/** How samples become pixels: `pixel = offset + factor * value`, both ways. */
export type PixelScale = {
  readonly x: readonly [offset: number, factor: number];
  readonly y: readonly [offset: number, factor: number];
};

/** Columns drawn and left out in turn for a line that is not solid. */
export type ColumnDash = readonly [drawn: number, free: number];

/**
 * A line with more samples than pixels across, drawn as one upright stretch for every column of pixels: from the
 * lowest to the highest point that the line has there. Stroking it as a path would look the same and cost a
 * hundred times as much.
 */
export function fillColumns(
  { pixels, stride, left, right, top, bottom }: PixelBox,
  { x, y, from, to }: LinePart,
  scale: PixelScale,
  colour: number,
  dash: ColumnDash | null,
): void {
  const [xOffset, xFactor] = scale.x;
  const [yOffset, yFactor] = scale.y;
  const columns = right - left;
  const high = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
  const low = new Float64Array(columns).fill(Number.NEGATIVE_INFINITY);
  const touch = (column: number, at: number) => {
    if (column < 0 || column >= columns) return;
    if (at < (high[column] as number)) high[column] = at;
    if (at > (low[column] as number)) low[column] = at;
  };
  let lastX = Number.NaN;
  let lastY = Number.NaN;
  for (let i = from; i < to; i++) {
    const px = xOffset + xFactor * (x[i] as number) - left;
    const py = yOffset + yFactor * (y[i] as number);
    if (Number.isNaN(py)) {
      lastY = py;
      continue;
    }
    const column = Math.floor(px);
    touch(column, py);
    if (!Number.isNaN(lastY)) {
      // The stretch between two points belongs to every column it crosses.
      const before = Math.floor(lastX);
      const [first, last] = before < column ? [before, column] : [column, before];
      for (let c = Math.max(0, first + 1); c <= Math.min(columns - 1, last); c++) {
        const there = lastY + ((py - lastY) * (c - lastX)) / (px - lastX);
        touch(c, there);
        touch(c - 1, there);
      }
    }
    lastX = px;
    lastY = py;
  }
  for (let c = 0; c < columns; c++) {
    if (dash && c % (dash[0] + dash[1]) >= dash[0]) continue;
    const begin = Math.max(top, Math.round(high[c] as number));
    const end = Math.min(bottom, Math.max(Math.round(low[c] as number), begin + 1));
    for (let p = begin * stride + left + c, row = begin; row < end; row++, p += stride) pixels[p] = colour;
  }
}

/** `#B4451F` as a pixel: red in the lowest byte, as canvases have it on every machine this runs on. */
export function pixelOf(hex: string): number {
  const value = Number.parseInt(hex.slice(1, 7), 16);
  const [red, green, blue] = [(value >> 16) & 255, (value >> 8) & 255, value & 255];
  return (0xff000000 | (blue << 16) | (green << 8) | red) >>> 0;
}
