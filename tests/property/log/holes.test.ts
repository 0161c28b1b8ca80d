import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

const names = ['Time', 'Engine speed', 'Vehicle speed', 'Pedal', 'Intake air temperature', 'Oddity'];
const units = ['s', 'rpm', 'km/h', '%', '°C', ''];
const quantities = ['time', 'engineSpeed', 'vehicleSpeed', 'pedal', 'intakeTemperature', null];
const rowCount = 260;

/** What stands in row `i`, in the units of the file. */
const valuesAt = (i: number) => [
  i / 20,
  2000 + ((i * 13) % 3000),
  40 + ((i * 7) % 900) / 10,
  (i * 3) % 101,
  25 + (i % 50) / 10,
  (i * 37) % 101,
];
const decimals = [3, 0, 2, 1, 1, 0];
const toSi = [
  (v: number) => v,
  (v: number) => (v * Math.PI) / 30,
  (v: number) => v / 3.6,
  (v: number) => v / 100,
  (v: number) => v + 273.15,
  (v: number) => v,
];

const style = fc.record({
  parted: fc.constantFrom(',', ';', '\t', '|', 'flush right', 'flush left'),
  decimal: fc.constantFrom('.', ','),
  /** Every so many cells are empty, counted over the table; 0 for none. */
  holes: fc.constantFrom(0, 7, 23, 41),
  empty: fc.constantFrom('', 'n/a', '-'),
  /** Every so many rows end in two stray delimiters; 0 for none. */
  stray: fc.constantFrom(0, 1, 2, 3),
  blankRows: fc.constantFrom(0, 60),
  headers: fc.constantFrom(0, 80),
  quotes: fc.constantFrom('none', 'double', 'single', 'spreadsheet'),
  glued: fc.boolean(),
  thousands: fc.boolean(),
  isNewestFirst: fc.boolean(),
  hasFoot: fc.boolean(),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
});
type Style = typeof style extends fc.Arbitrary<infer S> ? S : never;

const isHole = (s: Style, i: number, c: number) => s.holes > 0 && c > 0 && (i * 31 + c * 17) % s.holes === 0;

function written(s: Style): string {
  const isLinedUp = s.parted.startsWith('flush');
  const mark = isLinedUp ? '' : s.parted;
  // What no reader could tell apart is left out: commas as two things, blanks within cells that blanks part.
  const decimal = mark === ',' && s.quotes !== 'double' ? '.' : s.decimal;
  const group = decimal === ',' ? '.' : mark === ',' && s.quotes !== 'double' ? "'" : ',';
  const quotes = isLinedUp ? 'none' : s.quotes;
  const quoted = (text: string) =>
    ({ none: text, double: `"${text}"`, single: `'${text}'`, spreadsheet: `="${text}"` })[quotes];
  const pad = (text: string) =>
    s.parted === 'flush left' ? text.padEnd(32) : isLinedUp ? text.padStart(32) : text;
  const line = (cells: readonly string[]) => cells.map(pad).join(mark);
  const cellAt = (i: number, c: number) => {
    if (isHole(s, i, c)) return isLinedUp ? '' : s.empty;
    const [whole = '', part] = (valuesAt(i)[c] as number).toFixed(decimals[c]).split('.');
    const grouped = s.thousands && c === 1 ? whole.replace(/\B(?=(\d{3})+$)/g, group) : whole;
    const number = part === undefined ? grouped : `${grouped}${decimal}${part}`;
    return quoted(s.glued && !isLinedUp && units[c] ? `${number} ${units[c]}` : number);
  };
  const named = names.map((n, c) => (s.glued || units[c] === '' ? n : `${n} [${units[c]}]`));
  const head = line(named.map((n) => (isLinedUp ? n.replaceAll(' ', '_') : n)));
  const rows = Array.from({ length: rowCount }, (_, i) => {
    const end = s.stray > 0 && i % s.stray === 0 ? mark.repeat(2) : '';
    return line(names.map((_, c) => cellAt(i, c))) + end;
  });
  if (s.isNewestFirst) rows.reverse();
  const more = rows.flatMap((row, i) => [
    row,
    ...(s.headers > 0 && i % s.headers === s.headers - 1 ? [head] : []),
    ...(s.blankRows > 0 && i % s.blankRows === s.blankRows - 1 ? [mark.repeat(names.length - 1)] : []),
  ]);
  const foot = s.hasFoot
    ? [
        ['Min', '0', '0', '0', '0', '0'],
        ['Max', '9000', '900', '100', '90', '100'],
      ].map(line)
    : [];
  return [head, ...more, ...foot].join(s.lineEnd) + s.lineEnd;
}

it('every cell that is there is read where it stands, whatever is empty, stray or repeated around it', () => {
  fc.assert(
    fc.property(style, (how) => {
      const log = unwrap(readLog(new TextEncoder().encode(written(how)), { file: 'a.csv' }));
      expect(log.channels.map((c) => c.quantity)).toEqual(quantities);
      expect(log.time.length).toBe(rowCount);
      const off: string[] = [];
      for (const [c, channel] of log.channels.entries())
        for (let i = 0; i < rowCount; i++) {
          if (isHole(how, i, c)) continue;
          const expected = toSi[c]?.(valuesAt(i)[c] as number) ?? Number.NaN;
          const read = channel.values[i] ?? Number.NaN;
          if (!(Math.abs(read - expected) <= 1e-9 * (1 + Math.abs(expected))))
            off.push(`${names[c]} in row ${i}: ${read}, not ${expected}`);
        }
      expect(off.slice(0, 3)).toEqual([]);
    }),
    { numRuns: 150 },
  );
});
