import { describe, expect, it } from 'vitest';
import { fillColumns, pixelOf } from '../../../renderer/chart/dense-columns.ts';

/** What a line of these points looks like in a box of 8 by 6 pixels inside one of 10 by 8. */
function drawn(x: number[], y: number[], dash: readonly [number, number] | null = null): string[] {
  const stride = 10;
  const pixels = new Uint32Array(stride * 8);
  const part = { x: Float64Array.from(x), y: Float64Array.from(y), from: 0, to: x.length };
  fillColumns(
    { pixels, stride, left: 1, right: 9, top: 1, bottom: 7 },
    part,
    { x: [1, 1], y: [7, -1] },
    1,
    dash,
  );
  return Array.from({ length: 8 }, (_, row) =>
    Array.from(pixels.subarray(row * stride, (row + 1) * stride), (p) => (p ? '#' : '.')).join(''),
  );
}

describe('a line of many samples', () => {
  it('fills each column from its lowest to its highest point and stays in its box', () => {
    const x = [0.1, 0.5, 0.9, 1.5, 2.5, 2.6, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5];
    const y = [2, 5, 2, 2, 2, 40, 2, 2, 2, 2, -9, 2];
    const picture = drawn(x, y);
    expect(picture[0]).toBe('..........');
    expect(picture[7]).toBe('..........');
    expect(picture.every((row) => row.startsWith('.') && row.endsWith('.'))).toBe(true);
    const column = (c: number) => picture.map((row) => row[c]).join('');
    expect(column(1)).toBe('..###...');
    expect(column(3)).toBe('.####...');
    expect(column(5)).toBe('.....#..');
  });

  it('bridges columns without a sample and leaves a gap where a value is missing', () => {
    expect(drawn([0.5, 4.5], [3, 3])[4]).toBe('.#####....');
    expect(drawn([0.5, 2.5, 4.5], [3, Number.NaN, 3])[4]).toBe('.#...#....');
  });

  it('is dashed by columns', () => {
    expect(drawn([0.5, 7.5], [3, 3], [2, 1])[4]).toBe('.##.##.##.');
  });

  it('knows an ink as a pixel', () => {
    expect(pixelOf('#B4451F').toString(16)).toBe('ff1f45b4');
  });
});
