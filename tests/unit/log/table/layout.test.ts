import { describe, expect, it } from 'vitest';
import { readLog } from '../../../../core/log/index.ts';
import { findLayout } from '../../../../core/log/table/layout.ts';
import { unwrap } from '../../../../core/result/index.ts';

const rowsOf = (count: number, row: (i: number) => string) => Array.from({ length: count }, (_, i) => row(i));
const text = (lines: readonly string[], end = '\n') => lines.map((line) => line + end).join('');

describe('a log whose rows are all alike', () => {
  const long = ['Drive on a closed road', '', 'Time (s),Engine Speed (rpm),Boost (kPa)'].concat(
    rowsOf(3000, (i) => `${(i / 50).toFixed(2)},${2000 + i},${(i % 90) - 40}.5`),
  );

  it.each(['\n', '\r\n', '\r'])('is laid out by a few of its lines as by all, lines ending in %j', (end) => {
    // A quote anywhere has every line looked at.
    const whole = findLayout(text([...long, '"0.00",0,0.5'], end));
    expect(findLayout(text(long, end))).toEqual(whole);
    expect(whole).toMatchObject({ delimiter: ',', decimal: '.', columns: 3, firstDataLine: 4 });
  });

  it('is laid out in a small part of the time that all its lines would take', () => {
    const head = text(long);
    const quoted = `${head}"0.00",0,0.5\n`;
    const time = (of: string) => {
      const start = process.threadCpuUsage().user;
      for (let n = 0; n < 10; n++) findLayout(of);
      return process.threadCpuUsage().user - start;
    };
    time(head);
    time(quoted);
    expect(time(head)).toBeLessThan(0.5 * time(quoted));
  });
});

describe('a log that its first lines do not settle', () => {
  const values = (lines: readonly string[], column: string) =>
    unwrap(readLog(new TextEncoder().encode(text(lines)), { file: 'a.csv' })).channels.find(
      (c) => c.column === column,
    )?.values;

  it('has decimal commas also where the first of them comes late', () => {
    const lines = ['Time (ms);Thing', ...rowsOf(900, (i) => `${20 * i};${i < 600 ? '12' : '12,5'}`)];
    expect(values(lines, 'Thing')?.slice(598, 602)).toEqual(Float64Array.of(12, 12, 12.5, 12.5));
  });

  it('has as many columns as most of its rows, also where the first hundreds have fewer', () => {
    const lines = [
      'Time (s),Boost (kPa),Pedal (%)',
      ...rowsOf(310, (i) => `${(i / 50).toFixed(2)},${i}.5`),
      ...rowsOf(2000, (i) => `${((i + 310) / 50).toFixed(2)},${i}.5,7.5`),
    ];
    expect(findLayout(text(lines))?.columns).toBe(3);
  });
});
