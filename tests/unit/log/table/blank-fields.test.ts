import { describe, expect, it } from 'vitest';
import { channelOf, type Log, readLog } from '../../../../core/log/index.ts';
import { blankFields, cellsInFields } from '../../../../core/log/table/blank-fields.ts';
import { unwrap } from '../../../../core/result/index.ts';

const names = ['Time', 'RPM', 'Pedal', 'IAT', 'Lambda'];
const rowCount = 400;
/** Intake temperature stands in some rows only. */
const cellsOf = (i: number, hasIntake: boolean) => [
  (i / 20).toFixed(2),
  (800 + 15 * i).toFixed(0),
  i % 7 ? '100' : '9',
  hasIntake ? (30 + i / 40).toFixed(1) : '',
  (0.8 + (i % 9) / 100).toFixed(2),
];

function table(hasIntake: (i: number) => boolean, pad: (cell: string) => string): Log {
  const lines = [names, ...Array.from({ length: rowCount }, (_, i) => cellsOf(i, hasIntake(i)))];
  const text = lines.map((cells) => cells.map(pad).join('')).join('\n');
  return unwrap(readLog(new TextEncoder().encode(text), { file: 'lined-up.txt' }));
}

const right = (cell: string) => cell.padStart(9);
const left = (cell: string) => cell.padEnd(9);

describe('a table lined up by blanks', () => {
  it.each([
    ['flush right, now and then', right, (i: number) => i % 10 !== 3],
    ['flush right, mostly', right, (i: number) => i % 10 === 0],
    ['flush left, mostly', left, (i: number) => i % 10 === 0],
    ['flush right, first far into the file', right, (i: number) => i < 380],
  ])('may leave cells empty: %s', (_, pad, hasIntake) => {
    const log = table(hasIntake, pad);
    expect(log.time.length).toBe(rowCount);
    expect(log.channels.map((c) => c.column)).toEqual(names);
    const lambda = channelOf(log, 'lambda');
    const rpm = channelOf(log, 'engineSpeed');
    const intake = channelOf(log, 'intakeTemperature');
    for (let i = 0; i < rowCount; i++) {
      expect(lambda?.values[i]).toBeCloseTo(0.8 + (i % 9) / 100, 9);
      expect((((rpm?.values[i] as number) * 30) / Math.PI).toFixed(0)).toBe(`${800 + 15 * i}`);
      if (hasIntake(i)) expect(intake?.values[i]).toBeCloseTo(Number((30 + i / 40).toFixed(1)) + 273.15, 9);
    }
  });

  it('is not guessed at where a cell is missing and nothing is lined up', () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i / 20} ${2000 + i * 400} ${i % 11} 0.85`);
    rows[30] = '1.5 14000 0.85';
    const text = `Time RPM Pedal Lambda\n${rows.join('\n')}\n`;
    const log = unwrap(readLog(new TextEncoder().encode(text), { file: 'ragged.txt' }));
    expect(log.time.length).toBe(59);
    expect(log.warnings).toContainEqual({ code: 'log/rows-skipped', facts: { count: 1, firstLine: 32 } });
    expect(channelOf(log, 'lambda')?.values.every((v) => v === 0.85)).toBe(true);
  });
});

describe('the columns of lines that are lined up', () => {
  const lines = ['  1.0   200   0.9', '  1.5    95   0.8', ' 12.0         1.1', ' 12.5  1200   1.0'];

  it('are where their cells end', () => {
    const fields = blankFields(['  time   rpm  lambda', ...lines]);
    expect(fields?.map((f) => [f.from, f.to])).toEqual([
      [1, 5],
      [7, 11],
      [14, 17],
    ]);
  });

  it('take a cell by its place, and none that stands between them', () => {
    const fields = blankFields(lines) ?? [];
    expect(cellsInFields('  2.0         1.2', fields)).toEqual(['2.0', '', '1.2']);
    expect(cellsInFields('        12000   1.2', fields)).toBeNull();
  });

  it('are none where cells are flush neither left nor right', () => {
    expect(blankFields(['1.0 200 0.9', '10.0 95 0.85', '2 1200 1', '11.25 7 0.9'])).toBeNull();
  });
});
