/** A square picture as PNG, `size` pixels a side. */
export type IconPicture = { readonly size: number; readonly png: Uint8Array };

const headerLength = 6;
const entryLength = 16;

/**
 * An .ico with PNG pictures, as Windows reads it since Vista: a header (reserved 0, type 1, count), an entry of 16
 * bytes for each picture (width, height, colours, reserved, planes, bits, length, offset), then the pictures.
 * Widths from 1 to 256; 256 is written as 0. Source: Microsoft, "Icons" (ICONDIR, ICONDIRENTRY).
 */
export function icoFile(pictures: readonly IconPicture[]): Uint8Array {
  const head = Buffer.alloc(headerLength + entryLength * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let offset = head.length;
  for (const [i, { size, png }] of pictures.entries()) {
    if (!Number.isInteger(size) || size < 1 || size > 256) throw new RangeError(`${size} pixels in an .ico`);
    const at = headerLength + entryLength * i;
    head.writeUInt8(size % 256, at);
    head.writeUInt8(size % 256, at + 1);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += png.length;
  }
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}
