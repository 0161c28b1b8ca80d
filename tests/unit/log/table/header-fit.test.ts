import { describe, expect, it } from 'vitest';
import { readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

const names = ['Time (s)', 'RPM (rpm)', 'Vehicle speed (km/h)', 'Pedal (%)', 'Coolant temp (C)'];
const quantities = ['time', 'engineSpeed', 'vehicleSpeed', 'pedal', 'coolantTemperature'];
const cells = Array.from({ length: 60 }, (_, i) => [
  (i / 20).toFixed(2),
  (2500 + 40 * i).toFixed(0),
  (55 + 0.9 * i).toFixed(1),
  i < 20 ? '14.5' : '100.0',
  '88.5',
]);
const table = [names, ...cells];

const read = (lines: readonly string[]) =>
  readLog(new TextEncoder().encode(`${lines.join('\n')}\n`), { file: 'a.txt' });
const meant = (lines: readonly string[]) => unwrap(read(lines)).channels.map((c) => c.quantity);
const width = 2 + Math.max(...names.map((n) => n.length));

describe('a header of names with blanks over columns parted by blanks', () => {
  it.each([
    ['flush right', table.map((row) => row.map((c) => c.padStart(width)).join(''))],
    [
      'flush left',
      table.map((row) =>
        row
          .map((c) => c.padEnd(width))
          .join('')
          .trimEnd(),
      ),
    ],
    ['two blanks between the cells', table.map((row) => row.join('  '))],
  ])('keeps each name over its own numbers: %s', (_, lines) => {
    expect(meant(lines)).toEqual(quantities);
  });

  it('keeps units in brackets with their names', () => {
    const short = table.map((row, i) => (i > 0 ? row : row.map((n) => n.replace(/^(Vehicle|Coolant) /, ''))));
    expect(meant(short.map((row) => row.join(' ')))).toEqual([
      'time',
      'engineSpeed',
      'vehicleSpeed',
      'pedal',
      null,
    ]);
  });

  it('keeps each unit under its own name where a column has none', () => {
    const bare = ['Time', 'Engine speed', 'Lambda', 'Coolant temp', 'Baro'];
    const units = ['s', 'rpm', '', 'F', 'mbar'];
    const numbers = cells.map((row) => [row[0] ?? '', row[1] ?? '', '0.85', '190', '1009']);
    const lines = [bare, units, ...numbers].map((row) => row.map((c) => c.padStart(16)).join(''));
    expect(unwrap(read(lines)).channels.map((c) => `${c.quantity} ${c.unit}`)).toEqual([
      'time s',
      'engineSpeed rpm',
      'lambda lambda',
      'coolantTemperature F',
      'barometricPressure mbar',
    ]);
  });

  it('is refused where nobody can tell which name belongs to which column', () => {
    expect(read(table.map((row) => row.join(' ').replace(/ \(\S+\)/g, '')))).toEqual({
      ok: false,
      problems: [
        { code: 'log/names-uneven', facts: { names: 7, columns: 5 }, where: { file: 'a.txt', line: 1 } },
      ],
    });
  });
});

it('names parted by commas stand over numbers parted by semicolons', () => {
  expect(meant([names.join(','), ...cells.map((row) => row.join(';'))])).toEqual(quantities);
  expect(meant([names.join(';'), ...cells.map((row) => row.join('\t'))])).toEqual(quantities);
});

it('a comma that parts columns and decimals alike is refused', () => {
  const lines = [names.join(','), ...cells.map((row) => row.join(',').replaceAll('.', ','))];
  expect(read(lines)).toMatchObject({
    problems: [{ code: 'log/comma-twice', facts: { names: 5, columns: 9 }, where: { line: 1 } }],
  });
});

describe('a row with more numbers than columns', () => {
  const wide = (row: string[]) => [...row.slice(0, 3), `${(row[3] ?? '').split('.')[0]},5`, ...row.slice(4)];
  const time = (lines: string[]) => [...unwrap(read(lines)).time];
  const withWide = (at: (i: number) => boolean, more: (row: string[]) => string[] = (row) => row) => [
    names.join(','),
    ...cells.map((row, i) => more(at(i) ? wide(row) : row).join(',')),
  ];

  it('is left out, with how many there are and the first line', () => {
    const lines = withWide((i) => i % 9 === 4);
    const log = unwrap(read(lines));
    const count = cells.filter((_, i) => i % 9 === 4).length;
    expect(log.time.length).toBe(cells.length - count);
    expect(log.warnings.filter((w) => w.code === 'log/rows-wide')).toEqual([
      { code: 'log/rows-wide', facts: { count, firstLine: 6, columns: 5, isCommaParted: true } },
    ]);
  });

  it('is left out as the first one too, without its taking the header along', () => {
    const log = unwrap(read(withWide((i) => i < 2)));
    expect(log.channels.map((c) => c.quantity)).toEqual(quantities);
    expect(log.warnings).toContainEqual({
      code: 'log/rows-wide',
      facts: { count: 2, firstLine: 2, columns: 5, isCommaParted: true },
    });
  });

  it('is left out where every row ends in an empty cell', () => {
    const log = unwrap(
      read(
        withWide(
          (i) => i === 20,
          (row) => [...row, ''],
        ),
      ),
    );
    expect(log.time.length).toBe(cells.length - 1);
    expect(log.warnings.map((w) => w.code)).toEqual(['log/rows-wide']);
  });

  it('is left out where text stands last', () => {
    const lines = withWide(
      (i) => i === 20,
      (row) => [...row, 'sport'],
    );
    lines[0] = `${names.join(',')},Mode`;
    expect(time(lines).length).toBe(cells.length - 1);
  });

  it('is none where some rows end in an empty cell or a remark', () => {
    const lines = [
      names.join(','),
      ...cells.map((row, i) => [...row, ...(i % 7 === 3 ? [''] : i === 30 ? ['note'] : [])].join(',')),
    ];
    expect(time(lines).length).toBe(cells.length);
    expect(unwrap(read(lines)).warnings).toEqual([]);
  });

  it('is refused with its remedy where all of them are so and decimals explain it', () => {
    const lines = [
      names.join(','),
      ...cells.map((row, i) =>
        [...row.slice(0, 3), `${20 + Math.floor(i / 5)},${(2 * i) % 10}`, ...row.slice(4)].join(','),
      ),
    ];
    expect(read(lines)).toMatchObject({
      problems: [{ code: 'log/comma-twice', facts: { names: 5, columns: 6 }, where: { line: 1 } }],
    });
    const zeros = [
      names.join(','),
      ...cells.map((row, i) =>
        [
          ...row.slice(0, 3),
          `${9 * ((i * i) % 11)},${String((i * 37) % 100).padStart(2, '0')}`,
          ...row.slice(4),
        ].join(','),
      ),
    ];
    expect(read(zeros)).toMatchObject({ problems: [{ code: 'log/comma-twice' }] });
  });

  it('is kept where all of them have a gear that nobody named', () => {
    const lines = [names.join(','), ...cells.map((row, i) => [...row, 2 + Math.floor(i / 20)].join(','))];
    expect(unwrap(read(lines)).warnings.map((w) => w.code)).toEqual(['log/columns-unnamed']);
  });
});

it('a row number that nobody named does not shift the names', () => {
  const lines = [names.join(','), ...cells.map((row, i) => [i, ...row].join(','))];
  expect(meant(lines)).toEqual([null, ...quantities]);
});

it('columns without a name at the end are kept, and said', () => {
  const log = unwrap(read([names.slice(0, 4).join(','), ...cells.map((row) => row.join(','))]));
  expect(log.channels.map((c) => c.quantity)).toEqual([...quantities.slice(0, 4), null]);
  expect(log.warnings).toContainEqual({
    code: 'log/columns-unnamed',
    facts: { count: 1, columns: 5, line: 1 },
  });
});

it('a log without time takes its rate from an interval stated above the header', () => {
  const lines = [
    'Sample interval: 50 ms',
    names.slice(1).join(','),
    ...cells.map((row) => row.slice(1).join(',')),
  ];
  expect(unwrap(read(lines)).time[20]).toBeCloseTo(1, 9);
});

it('rows a second apart are said, since a row number may have been called time', () => {
  const lines = [names.join(','), ...cells.map((row, i) => [i, ...row.slice(1)].join(','))];
  expect(unwrap(read(lines)).warnings).toContainEqual({
    code: 'log/rows-far-apart',
    facts: { step_s: 1 },
  });
});

it('an hour that gives the column its name is not the unit of its numbers', () => {
  const lines = [['Hora', ...names.slice(1)].join(';'), ...cells.map((row) => row.join(';'))];
  expect(unwrap(read(lines)).time[20]).toBeCloseTo(1, 9);
});

it('days as a spreadsheet counts them become seconds of the day, over midnight too', () => {
  const days = (i: number) => (46_159 + (86_399 + i / 20) / 86_400).toFixed(9);
  const lines = [names.join(','), ...cells.map((row, i) => [days(i), ...row.slice(1)].join(','))];
  const { time } = unwrap(read(lines));
  expect(time[0]).toBeCloseTo(86_399, 3);
  expect((time[40] ?? 0) - (time[0] ?? 0)).toBeCloseTo(2, 3);
});

it('nanoseconds are told by their unit and by their steps', () => {
  for (const head of ['Time (ns)', 'Time']) {
    const lines = [
      [head, ...names.slice(1)].join(','),
      ...cells.map((row, i) => [`${i}50000000`.replace(/^0/, ''), ...row.slice(1)].join(',')),
    ];
    const log = unwrap(read(lines));
    expect((log.time[10] ?? 0) - (log.time[9] ?? 0)).toBeCloseTo(0.1, 6);
  }
});
