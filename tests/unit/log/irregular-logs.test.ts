import { describe, expect, it } from 'vitest';
import { channelOf, countedOnAt, findPulls, type Log, readLog, sampleFlag } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

/** Twenty seconds at 20 Hz: cruise, a pull from 5.00 to 14.95 s, coasting. */
const rowCount = 400;
const names = ['Time (s)', 'Engine Speed (rpm)', 'Pedal (%)', 'Boost (kPa)', 'Vehicle Speed (km/h)'];
const engineSpeed = (i: number) => (i < 100 ? 2500 : i < 300 ? 2500 + 20 * (i - 100) : 6500 - 30 * (i - 300));
const cellsOf = (i: number) => [
  (i / 20).toFixed(3),
  engineSpeed(i).toFixed(0),
  i < 100 ? '18.0' : i < 300 ? '100.0' : '0.0',
  (i >= 100 && i < 300 ? Math.min(120, 2 * (i - 100)) : -45).toFixed(1),
  (engineSpeed(i) * 0.022).toFixed(2),
];

type Change = {
  readonly head?: string;
  readonly row?: (cells: string[], i: number) => string[];
  readonly after?: (i: number) => string | null;
};

function text({ head = names.join(','), row = (c) => c, after = () => null }: Change): string {
  const lines = [head];
  for (let i = 0; i < rowCount; i++) {
    lines.push(row(cellsOf(i), i).join(','));
    const extra = after(i);
    if (extra !== null) lines.push(extra);
  }
  return `${lines.join('\n')}\n`;
}

const read = (change: Change | string): Log =>
  unwrap(
    readLog(new TextEncoder().encode(typeof change === 'string' ? change : text(change)), { file: 'a.csv' }),
  );

const time = (change: (seconds: number, i: number) => number): Change => ({
  row: (cells, i) => [change(i / 20, i).toFixed(3), ...cells.slice(1)],
});

function expectWhole(log: Log): void {
  expect(log.time.length).toBe(rowCount);
  const { pulls } = findPulls(log);
  expect(pulls.map((p) => [p.from, p.to])).toEqual([[100, 300]]);
  expect(channelOf(log, 'engineSpeed')?.column).toBeDefined();
}

const codes = (log: Log) => log.warnings.map((w) => w.code);

describe('a log is whole in spite of', () => {
  it.each<[string, Change, string[]]>([
    [
      'repeated headers',
      { after: (i) => (i % 100 === 50 ? names.join(',') : null) },
      ['log/header-repeated'],
    ],
    ['blank lines', { after: (i) => (i % 7 === 3 ? '' : null) }, []],
    ['rows of delimiters', { after: (i) => (i === 30 ? ',,,,,,,' : null) }, []],
    ['rows of delimiters, as many as in a row', { after: (i) => (i % 90 === 3 ? ',,,,' : null) }, []],
    ['cells that a spreadsheet is to take as text', { row: (c) => c.map((x) => `="${x}"`) }, []],
    [
      'cells and names in single quotes',
      { head: names.map((n) => `'${n}'`).join(','), row: (c) => c.map((x) => `'${x}'`) },
      [],
    ],
    ['remarks between rows', { after: (i) => (i % 90 === 3 ? '# marker set' : null) }, ['log/rows-skipped']],
    ['a remark behind a row', { row: (c, i) => (i === 33 ? [...c, 'note'] : c) }, []],
    ['a column of text', { head: `Mode,${names.join(',')}`, row: (c) => ['sport', ...c] }, []],
    ['a line of dashes under the header', { head: `${names.join(',')}\n-----,-----,-----,-----,-----` }, []],
    [
      'a group row above the names',
      { head: 'Clock,Engine,Driver,Engine,Vehicle\nTime,Speed,Pedal,Boost,Speed\ns,rpm,%,kPa,km/h' },
      [],
    ],
    ['a sparse group row', { head: ',Engine,,,Vehicle\nTime,Speed,Pedal,Boost,Speed\ns,rpm,%,kPa,km/h' }, []],
    [
      'commas inside quoted names',
      { head: names.map((n) => `"${n.replace(' (', ', ').replace(')', '')}"`).join(',') },
      [],
    ],
    [
      'line ends inside quoted names',
      { head: names.map((n) => `"${n.replace(' (', '\n(')}"`).join(',') },
      [],
    ],
    ['a trailing delimiter in the header alone', { head: `${names.join(',')},` }, []],
    ['a trailing delimiter in the rows alone', { row: (c) => [...c, ''] }, []],
    ['two columns of one name', { head: names.join(',').replace('Vehicle Speed (km/h)', 'Boost (kPa)') }, []],
    [
      'units glued to the numbers',
      {
        head: 'Time,RPM,Pedal,Boost,Speed',
        row: ([t = '', n, p, b, v]) => [t, `${n} rpm`, `${p}%`, `${b} kPa`, `${v}km/h`],
      },
      [],
    ],
    [
      'an inch sign in the header',
      { head: `${names.join(',')},Vacuum ("Hg)`, row: (c) => [...c, '29.9'] },
      [],
    ],
    [
      'a remark as first line of the header',
      { head: `# recorded on a closed road\n# ${names.join(',')}` },
      [],
    ],
    ['a stamp out of order', time((s, i) => (i === 200 ? s - 0.12 : s)), ['log/time-repaired']],
    [
      'two rows swapped',
      time((s, i) => (i === 200 ? s + 0.05 : i === 201 ? s - 0.05 : s)),
      ['log/time-repaired'],
    ],
    ['a stamp far ahead', time((s, i) => (i === 200 ? 99999 : s)), ['log/time-repaired']],
    ['stamps that no clock shows', time((s, i) => (i === 200 || i > 396 ? 1e300 : s)), ['log/time-repaired']],
    ['stamps that repeat', time((s, i) => (i % 25 === 3 ? s - 0.05 : s)), ['log/stamps-spread']],
    ['stamps of whole seconds', time((s) => Math.floor(s)), ['log/stamps-spread']],
    [
      'a first stamp that is missing',
      { row: (c, i) => (i === 0 ? ['', ...c.slice(1)] : c) },
      ['log/time-repaired'],
    ],
    ['missing stamps', { row: (c, i) => (i % 40 === 9 ? ['', ...c.slice(1)] : c) }, ['log/time-repaired']],
  ])('%s', (_, change, warnings) => {
    const log = read(change);
    expectWhole(log);
    expect(log.time.every((t) => Number.isFinite(t))).toBe(true);
    expect(codes(log)).toEqual(warnings);
  });

  it('numbers in the preamble of a narrow table', () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${(i / 20).toFixed(2)};${2000 + i}`);
    const log = read(`Mass;1400\nGear;3\n\nTime (s);RPM\n${rows.join('\n')}\n`);
    expect(log.time.length).toBe(60);
    expect(log.channels.map((c) => c.quantity)).toEqual(['time', 'engineSpeed']);
    expect(log.style).toMatchObject({ headerLine: 4, firstDataLine: 5 });
  });

  it.each([
    ['words', ['Min,0,0,-60,0', 'Max,9000,100,300,200', 'Mean,3000,50,20,80']],
    ['nothing', [',0,0,-60,0', ',9000,100,300,200']],
  ])('a foot of lowest and highest values with %s in the place of time', (_, foot) => {
    const log = read(`${text({})}${foot.join('\n')}\n`);
    expectWhole(log);
    expect(log.warnings).toEqual([{ code: 'log/foot-left-out', facts: { count: foot.length } }]);
    expect(channelOf(log, 'boost')?.values.at(-1)).toBe(-45_000);
  });

  it.each([
    ['', (s: number) => s],
    [' in whole seconds', (s: number) => Math.floor(s)],
  ])('the newest row standing first%s', (_, stamp) => {
    const [head, ...body] = text(time(stamp)).trimEnd().split('\n');
    const log = read([head, ...body.reverse()].join('\n'));
    expectWhole(log);
    expect(log.time[0]).toBe(0);
    expect(codes(log)).toContain('log/newest-first');
  });

  it('the newest row standing first over a foot', () => {
    const [head, ...body] = text({}).trimEnd().split('\n');
    const log = read([head, ...body.reverse(), 'Min,0,0,-60,0', 'Max,9000,100,300,200'].join('\n'));
    expectWhole(log);
    expect(codes(log)).toEqual(['log/newest-first', 'log/foot-left-out']);
  });

  it('empty cells between tabs, with stray tabs behind some rows', () => {
    const rows = Array.from({ length: rowCount }, (_, i) => {
      const cells = cellsOf(i).map((c, k) => (k > 1 && (i + 7 * k) % 23 === 0 ? '' : c));
      return [...cells, ...(i % 3 ? [] : ['', ''])].join('\t');
    });
    const log = read(`${names.join('\t')}\n${rows.join('\n')}\n`);
    expectWhole(log);
    expect(log.style.delimiter).toBe('\t');
    const speed = channelOf(log, 'vehicleSpeed')?.values;
    for (let i = 0; i < rowCount; i++)
      if ((i + 28) % 23 !== 0) expect(speed?.[i]).toBeCloseTo(Number(cellsOf(i)[4]) / 3.6, 9);
  });

  it('units glued to every number, and no number in some rows bare', () => {
    const log = read({
      head: 'Time,Engine Speed,Pedal,Boost,Vehicle Speed,Oddity',
      row: ([t, n, p, b, v], i) => [
        `${t} s`,
        `${n} rpm`,
        `${p} %`,
        `${b} kPa`,
        `${v} km/h`,
        i % 3 ? 'n/a' : '7',
      ],
    });
    expectWhole(log);
    expect(log.warnings).toEqual([]);
  });

  it('a header that comes back among cells of which none is a plain number', () => {
    const glued = (cells: readonly string[]) =>
      cells.map((c, k) => `${c} ${['s', 'rpm', '%', 'kPa', 'km/h'][k]}`);
    const log = read({ row: glued, after: (i) => (i % 150 === 149 ? names.join(',') : null) });
    expectWhole(log);
    expect(log.warnings).toEqual([{ code: 'log/header-repeated', facts: { count: 2, firstLine: 152 } }]);
  });

  it('a time that is left, beside the one that runs on', () => {
    const log = read({ head: `Time left (s),${names.join(',')}`, row: (c, i) => [`${20 - i / 20}`, ...c] });
    expectWhole(log);
    expect(codes(log)).toEqual([]);
  });

  it('a last row cut short, which is left out', () => {
    const log = read(text({}).slice(0, -12));
    expect(log.time.length).toBe(rowCount - 1);
    expect(log.warnings).toContainEqual({ code: 'log/last-row-cut', facts: { line: rowCount + 1 } });
  });

  it('zero bytes at its end, as after a power cut', () => {
    const log = read(`${text({})}${'\0'.repeat(5000)}`);
    expectWhole(log);
    expect(codes(log)).toEqual(['log/padded-tail']);
  });

  it('a second table with other columns, which is said and not read', () => {
    const log = read(
      `${text({})}\nTime (s),Lambda,Spark Advance (deg),Coolant Temp (C)\n1,0.8,12,88\n2,0.8,12,88\n`,
    );
    expectWhole(log);
    expect(log.warnings).toEqual([{ code: 'log/other-table', facts: { line: rowCount + 3 } }]);
  });

  it('mixed line ends', () => {
    expectWhole(
      read(
        text({})
          .split('\n')
          .map((l, i) => l + (i % 3 ? '\n' : '\r\n'))
          .join(''),
      ),
    );
  });
});

describe('cells that are no numbers', () => {
  it('are NaN and flagged where they say that there is none', () => {
    const log = read({ row: (c, i) => (i % 9 === 4 ? [...c.slice(0, 3), 'broken', ...c.slice(4)] : c) });
    const boost = channelOf(log, 'boost');
    expect(boost?.values[13]).toBeNaN();
    expect(boost?.flags[13]).toBe(sampleFlag.text);
    expect(boost?.flags[12]).toBe(0);
    expectWhole(log);
  });

  it('are one and zero where they switch', () => {
    const log = read({
      head: `${names.join(',')},Traction control`,
      row: (c, i) => [...c, i === 150 ? 'on' : 'off'],
    });
    const traction = channelOf(log, 'tractionControl');
    expect([traction?.values[149], traction?.values[150]]).toEqual([0, 1]);
    expect(findPulls(log).pulls[0]?.flags.map((f) => f.code)).toContain('log/pull-intervention');
  });

  it('hold the last value of a sensor slower than the file', () => {
    const log = read({ row: (c, i) => (i % 4 ? [c[0] ?? '', c[1] ?? '', '', c[3] ?? '', ''] : c) });
    const speed = channelOf(log, 'vehicleSpeed');
    expect([...(speed?.flags.subarray(0, 5) ?? [])]).toEqual([0, 4, 4, 4, 0]);
    expect(speed?.values[3]).toBe(speed?.values[0]);
    expectWhole(log);
  });

  it('stay NaN where a sensor fell silent', () => {
    const log = read({ row: (c, i) => (i > 320 ? [...c.slice(0, 4), ''] : c) });
    expect(channelOf(log, 'vehicleSpeed')?.values[350]).toBeNaN();
    expect(channelOf(log, 'vehicleSpeed')?.flags[350]).toBe(sampleFlag.missing);
  });
});

describe('zero bytes', () => {
  const lines = text({}).trimEnd().split('\n');
  const zeros = (length: number) => '\0'.repeat(length);

  it('in the middle of a log, as a power cut leaves them, cost their row alone', () => {
    // The cut ends one row, the zeros follow, and the next row begins behind them.
    const cut = [
      ...lines.slice(0, 350),
      `${lines[350]?.slice(0, 9)}${zeros(700)}${lines[351]}`,
      ...lines.slice(352),
    ];
    const log = read(`${cut.join('\n')}\n`);
    expect(log.time.length).toBe(rowCount - 2);
    expect(codes(log)).toEqual(['log/zero-rows']);
    expect(log.warnings[0]).toEqual({ code: 'log/zero-rows', facts: { count: 1, firstLine: 351 } });
    expect(findPulls(log).pulls.map((p) => [p.from, p.to])).toEqual([[100, 300]]);
  });

  it('far behind the first rows are left out with the line as well', () => {
    const many = Array.from({ length: 20_000 }, (_, i) => `${(i / 20).toFixed(2)},${2000 + (i % 500)},50`);
    many[15_000] = `750.00,2\0\0\0`;
    const log = read(`Time (s),RPM,Pedal (%)\n${many.join('\n')}\n`);
    expect(log.time.length).toBe(19_999);
    expect(log.warnings).toContainEqual({ code: 'log/zero-rows', facts: { count: 1, firstLine: 15_002 } });
  });

  it('in many rows refuse the file', () => {
    const holed = lines.map((line, i) => (i > 40 && i % 20 === 0 ? `${line}\0` : line)).join('\n');
    expect(readLog(new TextEncoder().encode(holed), { file: 'a.csv' })).toMatchObject({
      problems: [{ code: 'log/null-bytes', where: { file: 'a.csv', line: 61 } }],
    });
  });
});

it.each([
  ['with names alone', (row: string[]) => row],
  ['with a unit beside the name', (row: string[], c: number) => [`C${c} ${row[0]}`, 'x', ...row.slice(1)]],
])('a table on its side is read upright, and that is said: %s', (_, change) => {
  const plain = [names, ...Array.from({ length: 90 }, (_, i) => cellsOf(i))]
    .map((r) => r.join(','))
    .join('\n');
  const side = names.map((name, c) =>
    change([name, ...Array.from({ length: 90 }, (_, i) => cellsOf(i)[c] as string)], c),
  );
  for (const head of [
    [],
    [['Channel', ...Array.from({ length: (side[0]?.length ?? 1) - 1 }, (_, i) => `${i + 1}`)]],
  ]) {
    const log = read([...head, ...side].join('\n'));
    expect(log.warnings).toContainEqual({ code: 'log/rewritten', facts: { form: 'on-its-side' } });
    expect(log.time).toEqual(read(plain).time);
  }
});

it('a log of few rows with text in front lies on no side', () => {
  const rows = Array.from({ length: 6 }, (_, i) => ['Boost', ...cellsOf(i), '1', '2']);
  expect(read([['Mode', ...names, 'A', 'B'], ...rows].map((r) => r.join(',')).join('\n')).time.length).toBe(
    6,
  );
});

describe('the clock', () => {
  it('that starts anew begins a segment', () => {
    const log = read(time((s, i) => (i >= 350 ? s - 17.5 : s)));
    expect(log.segments).toEqual([
      { from: 0, to: 350 },
      { from: 350, to: 400, countedOn_s: 18 },
    ]);
    expect(codes(log)).toEqual(['log/clock-reset']);
    // Counted on, so that no two samples share a moment.
    expect(log.time.every((t, i) => i === 0 || t > (log.time[i - 1] as number))).toBe(true);
    expect(countedOnAt(log, 349)).toBe(0);
    expect((log.time[360] as number) - countedOnAt(log, 360)).toBeCloseTo(0.5, 9);
  });

  it.each<[string, (s: number, i: number) => number]>([
    ['go back by seconds', (s, i) => (i >= 200 && i < 210 ? s - 3.2 : s)],
    ['go back to the first', (s, i) => (i >= 200 && i < 210 ? (i - 200) / 20 : s)],
    ['go back to nothing', (s, i) => (i >= 200 && i < 210 ? 0 : s)],
    ['go back by seconds of their own', (s, i) => (i >= 200 && i < 212 ? s - 1 - ((i * 7) % 5) : s)],
    ['run ahead by seconds', (s, i) => (i >= 200 && i < 210 ? s + 3.2 : s)],
    ['run ahead, a second time too', (s, i) => ((i >= 150 && i < 160) || (i >= 200 && i < 203) ? s + 8 : s)],
  ])('that comes back after some stamps that %s did not start anew', (_, clock) => {
    const log = read(time(clock));
    expectWhole(log);
    expect(codes(log)).toEqual(['log/time-repaired']);
    expect(log.segments).toEqual([{ from: 0, to: rowCount }]);
    log.time.forEach((t, i) => {
      expect(t).toBeCloseTo(i / 20, 6);
    });
  });

  it('that starts anew twice within seconds starts anew both times', () => {
    const log = read(time((s, i) => (i < 200 ? s : i < 230 ? s - 10 : s - 11.5)));
    expect(log.segments.map((s) => s.to)).toEqual([200, 230, 400]);
    expect(codes(log)).toEqual(['log/clock-reset']);
  });

  it('that skips begins a segment, and no pull crosses it', () => {
    const log = read(time((s, i) => (i >= 200 ? s + 30 : s)));
    expect(log.segments.map((s) => s.to)).toEqual([200, 400]);
    expect(findPulls(log).pulls.map((p) => [p.from, p.to])).toEqual([
      [100, 200],
      [200, 300],
    ]);
  });

  it('runs on over midnight', () => {
    const clock = (s: number) => {
      const t = (86_390 + s) % 86_400;
      const two = (n: number) => String(Math.floor(n)).padStart(2, '0');
      return `${two(t / 3600)}:${two((t / 60) % 60)}:${two(t % 60)}.${String(Math.round((t % 1) * 1000)).padStart(3, '0')}`;
    };
    const log = read({ row: (c, i) => [clock(i / 20), ...c.slice(1)] });
    expectWhole(log);
    expect(log.style.timeFormat).toBe('clock');
    expect(log.time[0]).toBe(86_390);
    expect(log.time[399]).toBeCloseTo(86_409.95, 6);
  });

  it('is counted from the rows where the preamble states a rate', () => {
    const log = read({
      head: `Sample rate: 20 Hz\n\nSample,${names.slice(1).join(',')}`,
      row: (c, i) => [String(i), ...c.slice(1)],
    });
    expectWhole(log);
    expect(log.time[20]).toBe(1);
    expect(codes(log)).toEqual(['log/time-from-rate']);
  });

  it.each([
    ['Time', 's', (i: number) => (i / 20).toFixed(2)],
    ['Time', 'ms', (i: number) => String(i * 50)],
    ['Timestamp', 'us', (i: number) => String(i * 50_000)],
    ['Time (min)', 'min', (i: number) => (i / 1200).toFixed(7)],
  ])('%s is told to be in %s', (head, format, stamp) => {
    const log = read({ head: [head, ...names.slice(1)].join(','), row: (c, i) => [stamp(i), ...c.slice(1)] });
    expect(log.style.timeFormat).toBe(format);
    expect(log.time[100]).toBeCloseTo(5, 4);
  });

  it('in ISO 8601 is the time of day as written', () => {
    const log = read({
      row: (c, i) => [new Date(Date.UTC(2027, 2, 14, 10) + i * 50).toISOString(), ...c.slice(1)],
    });
    expect(log.style.timeFormat).toBe('iso');
    expect(log.time[100]).toBe(36_005);
  });
});
