import { describe, expect, it } from 'vitest';
import { sampleFlag } from '../../../../core/log/channel.ts';
import { readCell } from '../../../../core/log/table/cell.ts';

describe('a cell', () => {
  it.each([
    ['12.5', '.', 12.5],
    ['12,5', ',', 12.5],
    ['1,234.5', '.', 1234.5],
    ['1.234,5', ',', 1234.5],
    ["1'234'567.5", '.', 1234567.5],
    ['1 234,5', ',', 1234.5],
    ['1\u00a0234,5', ',', 1234.5],
    ['\u22125', '.', -5],
    ['1e3', '.', 1000],
    ['3.5', ',', 3.5],
    ['on', '.', 1],
    ['Aus', '.', 0],
    ['ja', '.', 1],
    ['acceso', '.', 1],
    ['Fałsz', '.', 0],
    ['uit', '.', 0],
    ['0x1F', '.', 31],
    ["'12.5'", '.', 12.5],
    ['14:03:12.5', '.', 50592.5],
  ] as const)('%s with decimal %s is %d', (text, decimal, value) => {
    expect(readCell(text, decimal)).toMatchObject({ value, flag: 0 });
  });

  it.each([
    ['101.3 kPa', 101.3, 'kPa'],
    ['12%', 12, '%'],
    ['88°C', 88, '°C'],
    ['5.2km/h', 5.2, 'km/h'],
    ['29.9"Hg', 29.9, '"Hg'],
    ['2\u202f345 tr/min', 2345, 'tr/min'],
    ['2345 1/min', 2345, '1/min'],
    ['1 234 567.5 Pa', 1234567.5, 'Pa'],
  ])('%s keeps its glued unit', (text, value, unit) => {
    expect(readCell(text, '.')).toMatchObject({ value, unit, kind: 'number' });
  });

  it.each(['', ' ', '-', 'n/a', 'NaN', 'null', '#N/A', 'inf'])('“%s” is missing', (text) => {
    const cell = readCell(text, '.');
    expect(cell.value).toBeNaN();
    expect(cell.flag).toBe(sampleFlag.missing);
  });

  it.each(['lap start', '12 13', '1.2.3', '1e999'])('“%s” is text', (text) => {
    const cell = readCell(text, '.');
    expect(cell.value).toBeNaN();
    expect(cell.flag).toBe(sampleFlag.text);
  });
});
