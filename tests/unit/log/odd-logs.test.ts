import { describe, expect, it } from 'vitest';
import { channelOf, createLogReader, findPulls, type Log, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

/** Rows of one pull by the pedal from 3 to 11 s, 20 a second: time, rpm, km/h, pedal, manifold pressure. */
const rows = Array.from({ length: 300 }, (_, i) => {
  const t = i / 20;
  const isPull = t >= 3 && t < 11;
  const rpm = t < 3 ? 2500 : isPull ? 2500 + 450 * (t - 3) : 6100 - 250 * (t - 11);
  return [
    t.toFixed(2),
    rpm.toFixed(0),
    (rpm * 0.022).toFixed(1),
    isPull ? '100' : '12',
    isPull ? '180' : '45',
  ];
});
const names = [
  'Time (s)',
  'Engine speed (rpm)',
  'Vehicle speed (km/h)',
  'Pedal (%)',
  'Manifold pressure (kPa)',
];
const readText = (text: string): Log => unwrap(readLog(new TextEncoder().encode(text), { file: 'odd.csv' }));
const spansOf = (log: Log) => findPulls(log).pulls.map((p) => [p.start_s, p.end_s]);
const quoted = (cells: readonly string[], delimiter: string) => cells.map((c) => `"${c}"`).join(delimiter);

describe('a log with quotes around its cells', () => {
  it.each([', ', ' ; ', ' | ', ' \t '])('may have blanks around its delimiter %o', (delimiter) => {
    const log = readText([names, ...rows].map((r) => quoted(r, delimiter)).join('\n'));
    expect(log.channels.map((c) => c.column)).toEqual(names);
    expect(spansOf(log)).toEqual([[3, 10.95]]);
  });

  it.each([1, 7, 20])('may end within a cell, %d characters before its end', (missing) => {
    const text = [names, ...rows].map((r) => quoted(r, ',')).join('\r\n');
    const log = readText(text.slice(0, -missing));
    // The last row may be lost, no other.
    expect(log.time.length).toBeGreaterThanOrEqual(rows.length - 1);
    expect(spansOf(log)).toEqual([[3, 10.95]]);
  });

  it('may hold a row that was cut within a cell', () => {
    const lines = [names, ...rows].map((r) => quoted(r, ';'));
    lines[150] = (lines[150] as string).slice(0, 9);
    const log = readText(lines.join('\n'));
    expect(log.time.length).toBeGreaterThanOrEqual(rows.length - 1);
    expect(spansOf(log)).toEqual([[3, 10.95]]);
  });
});

describe('a log with rows that are not to be taken at their word', () => {
  it('keeps absolute pressure absolute beside a row of lowest values', () => {
    const log = readText([names, ...rows, ['Min', '0', '0', '0', '0']].map((r) => r.join(';')).join('\n'));
    expect(channelOf(log, 'manifoldPressure')?.column).toBe(names[4]);
    expect(channelOf(log, 'boost')).toBeUndefined();
  });

  it('still takes a pressure that stands below zero in vacuum for gauge', () => {
    const gauge = rows.map((r) => [...r.slice(0, 4), `${Number(r[4]) - 100}`]);
    const log = readText([names, ...gauge].map((r) => r.join(';')).join('\n'));
    expect(channelOf(log, 'boost')?.column).toBe(names[4]);
  });

  it.each([2, 3])('goes on where %d rows were written twice', (count) => {
    const twice = [...rows.slice(0, 150), ...rows.slice(150 - count, 150), ...rows.slice(150)];
    const log = readText([names, ...twice].map((r) => r.join(',')).join('\n'));
    expect(log.segments).toHaveLength(1);
    expect(spansOf(log)).toEqual([[3, 10.95]]);
    const note = log.warnings.find((w) => w.code === 'log/time-repaired');
    // The last of them has the stamp of the row before it and is no step back.
    expect(note?.facts).toMatchObject({ count: count - 1 });
  });
});

it('a row of types between names and data is no part of the names', () => {
  const bare = ['Time', 'Engine speed', 'Vehicle speed', 'Pedal', 'Manifold pressure'];
  const units = ['[s]', '[rpm]', '[km/h]', '[%]', '[kPa]'];
  const types = bare.map(() => 'float');
  const log = readText([bare, units, types, ...rows].map((r) => r.join(';')).join('\n'));
  expect(log.channels.map((c) => c.column)).toEqual(bare);
  expect(channelOf(log, 'vehicleSpeed')?.unit).toBe('km/h');
  expect(spansOf(log)).toEqual([[3, 10.95]]);
});

it.each([
  ['Tair (C)', 'intakeTemperature'],
  ['Twater (C)', 'coolantTemperature'],
  ['Toil (C)', 'oilTemperature'],
] as const)('%s is a temperature with its T in front', (name, quantity) => {
  const log = readText(['Time (s),RPM', name].join(',').concat('\n0,3000,90\n0.1,3010,90\n0.2,3020,91\n'));
  expect(channelOf(log, quantity)?.column).toBe(name);
});

describe('a header longer than anybody reads', () => {
  it('is known by its two ends, the unit behind it too', () => {
    const midst = 'recorded by the second channel of the amplifier in the boot of the car, '.repeat(6);
    const long = [
      'Time (s)',
      `"${midst}Engine speed (rpm)"`,
      `"Vehicle speed ${midst}(km/h)"`,
      `"Pedal position ${midst}(%)"`,
      `"Manifold pressure ${midst}(kPa)"`,
    ];
    const log = readText([long, ...rows].map((r) => r.join(',')).join('\n'));
    expect(log.channels.map((c) => `${c.quantity} ${c.unit}`)).toEqual([
      'time s',
      'engineSpeed rpm',
      'vehicleSpeed km/h',
      'pedal %',
      'manifoldPressure kPa',
    ]);
    expect(spansOf(log)).toEqual([[3, 10.95]]);
  });
});

describe('columns whose sensors begin late', () => {
  it.each([1, 20, 100])('keep their names where the first %d rows leave the cells away', (late) => {
    const text = [names, ...rows.map((r, i) => (i < late ? r.slice(0, 4) : r))]
      .map((r) => r.join(','))
      .join('\n');
    const log = readText(text);
    expect(log.channels.map((c) => c.column)).toEqual(names);
    expect(log.time).toHaveLength(rows.length);
    expect(log.channels[4]?.values.findIndex(Number.isFinite)).toBe(late);
    expect(spansOf(log)).toEqual([[3, 10.95]]);
  });
});

describe('a file that ends within its last number', () => {
  /** Ends at 9.95 s, within the pull, with the column given last. */
  const cutIn = (column: number, missing: number, decimals: number) => {
    const order = [0, 1, 2, 3, 4].filter((c) => c !== column).concat(column);
    const part = [names, ...rows.slice(0, 200)].map((r, i) =>
      order.map((c) => (c === column && i > 0 ? Number(r[c]).toFixed(decimals) : r[c])).join(','),
    );
    const text = part.join('\n');
    return readText(text.slice(0, text.length - missing));
  };
  it.each([
    ['its decimals', 1, 2, 2],
    ['its decimals and more', 1, 4, 2],
    ['digits of a whole number', 1, 1, 0],
    ['most digits of a whole number', 1, 3, 0],
    ['a decimal of the speed', 2, 1, 1],
  ])('of which %s are missing loses that row, which would bend the pull', (_, column, missing, decimals) => {
    const log = cutIn(column, missing, decimals);
    expect(log.time).toHaveLength(199);
    expect(log.warnings).toEqual([{ code: 'log/last-row-cut', facts: { line: 201 } }]);
    expect(findPulls(log).pulls.map((p) => p.flags.map((n) => n.code))).toEqual([['log/pull-no-end']]);
  });

  it.each([1, 2])('keeps the row where nothing is missing, column %d', (column) => {
    const log = cutIn(column, 0, 1);
    expect(log.time).toHaveLength(200);
    expect(log.warnings).toEqual([]);
  });

  it.each([
    ['a number with fewer decimals, as others before it', ['1.25', '1.5', '1.75', '2']],
    ['a lift of the pedal', ['100', '100', '100', '99']],
    ['a state', ['3', '3', '3', '0']],
  ])('keeps %s', (_, last) => {
    const part = rows.slice(0, 200).map((r, i) => [...r, last[i % 4] ?? ''].join(','));
    expect(readText([`${names.join(',')},Aux`, ...part].join('\n')).warnings).toEqual([]);
  });

  it('is told whatever the size of the pieces in which it is read', () => {
    const text = [names, ...rows.slice(0, 200)].map((r) => r.slice(0, 3).join(',')).join('\n');
    const bytes = new TextEncoder().encode(text.slice(0, -1));
    for (const size of [5, 64, 1000]) {
      const reader = createLogReader({ file: 'odd.csv' });
      for (let at = 0; at < bytes.length; at += size) reader.push(bytes.slice(at, at + size));
      expect(unwrap(reader.finish()).time).toHaveLength(199);
    }
  });
});
