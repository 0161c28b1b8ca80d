import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findPulls, type Log, readLog } from '../../../core/log/index.ts';
import { CarSchema, findRolls, powerOfPull, unknownConditions } from '../../../core/power/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText, problemText } from '../../../core/words/index.ts';

const show = createShow('en', metricUnits);

const car = CarSchema.parse({
  mass_kg: 1400,
  gearRatios: [3.4, 2, 1.4, 1, 0.8],
  finalDrive: 3.9,
  tyre: '225/45 R17',
});

/** Pulls, their power and rolls are numbers inside the log, and everything said of them has words. */
function isUsable(log: Log): void {
  expect(log.segments.length).toBeGreaterThan(0);
  const said = [...log.warnings];
  for (const pull of findPulls(log, car).pulls) {
    expect(pull.from).toBeLessThan(pull.to);
    expect(pull.to).toBeLessThanOrEqual(log.time.length);
    expect(pull.end_s - pull.start_s).toBeGreaterThan(0);
    said.push(...pull.flags);
    const power = powerOfPull(log, pull, car, unknownConditions);
    if (!power.ok) continue;
    expect(power.value.wheelPower.every(Number.isFinite)).toBe(true);
    expect(power.value.wheelPowerError.every(Number.isFinite)).toBe(true);
    said.push(...power.value.notes);
  }
  for (const note of said) expect(noteText(note, show)).not.toMatch(/NaN|undefined|∞|^.{0,5}$/);
  findRolls(log);
}

/** Reads, finds pulls, power and rolls, and puts what is said into words: none of it may throw. */
function survives(bytes: Uint8Array): void {
  const result = readLog(bytes, { file: 'any.csv' });
  if (result.ok) {
    isUsable(result.value);
    return;
  }
  for (const problem of result.problems) {
    expect(problem.where?.file).toBe('any.csv');
    expect(problemText(problem, show).message.length).toBeGreaterThan(10);
    expect(problemText(problem, show).remedy.length).toBeGreaterThan(10);
  }
}

const pieces = fc.constantFrom(
  ',',
  ';',
  '\t',
  '\n',
  '\r\n',
  '\r',
  ' ',
  '"',
  '""',
  '.',
  '-',
  '+',
  'e',
  '1',
  '23',
  '4.5',
  '6,7',
  'Time',
  'RPM',
  'Throttle',
  '(s)',
  '[%]',
  'n/a',
  '12:00:01',
  '2027-03-14T10:00:00',
  '\0',
  '\ufeff',
  '°',
  'é',
  '{',
  '<',
  '#',
  '1e999',
  '-0',
  '𝟜',
);

it('random bytes neither crash nor hang', () => {
  fc.assert(fc.property(fc.uint8Array({ maxLength: 3000 }), survives), { numRuns: 300 });
});

it('random pieces of a table neither crash nor hang', () => {
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 400 }), (list) =>
      survives(new TextEncoder().encode(list.join(''))),
    ),
    { numRuns: 500 },
  );
});

it('a good log with bytes changed at random neither crashes nor hangs', () => {
  const rows = Array.from(
    { length: 300 },
    (_, i) => `${(i / 20).toFixed(2)},${2000 + 15 * i},${i > 60 && i < 250 ? 100 : 12},${60 + i / 3}`,
  );
  const good = new TextEncoder().encode(
    `Time (s),Engine Speed (rpm),Pedal (%),Speed (km/h)\n${rows.join('\n')}\n`,
  );
  const change = fc.tuple(fc.nat(good.length - 1), fc.integer({ min: 0, max: 255 }));
  fc.assert(
    fc.property(fc.array(change, { maxLength: 30 }), (changes) => {
      const bytes = good.slice();
      for (const [at, value] of changes) bytes[at] = value;
      survives(bytes);
    }),
    { numRuns: 300 },
  );
});

/** Thirty seconds at 20 Hz with a pull from 5 to 15 s. */
const names = [
  'Time (s)',
  'Engine Speed (rpm)',
  'Pedal (%)',
  'Speed (km/h)',
  'Boost (kPa)',
  'Altitude (m)',
  'GPS Speed (km/h)',
  'Wheel Power (kW)',
];
const table = Array.from({ length: 600 }, (_, i) => {
  const rpm = i < 100 ? 2300 : i < 300 ? 2300 + 20 * (i - 100) : Math.max(900, 6300 - 30 * (i - 300));
  const isPull = i >= 100 && i < 300;
  const boost = isPull ? Math.min(110, i - 100) : -40;
  return [i / 20, rpm, isPull ? 100 : 12, rpm * 0.022, boost, 210 + i / 100, rpm * 0.0221, rpm / 40];
});
const column = fc.nat(names.length - 1);
const row = fc.nat(table.length - 1);
const damage = fc.oneof(
  fc.record({
    kind: fc.constant('scale' as const),
    column,
    by: fc.constantFrom(0, -1, 1e-300, 1e-6, 1e3, 1e9, 1e17, 1e300),
  }),
  fc.record({
    kind: fc.constant('fill' as const),
    column,
    from: row,
    with: fc.constantFrom('', 'n/a', 'NaN', '1e309', '-inf', '00:00:01', '9'.repeat(400), '1,234.5', '0x1F'),
  }),
  fc.record({ kind: fc.constant('leave out' as const), column }),
  fc.record({ kind: fc.constant('again' as const), from: row, rows: fc.nat(200) }),
  fc.record({ kind: fc.constant('backwards' as const), from: row }),
);

it('a good log whose columns and rows are damaged at random neither crashes nor hangs', () => {
  fc.assert(
    fc.property(
      fc.array(damage, { minLength: 1, maxLength: 6 }),
      fc.constantFrom(',', ';', '\t', ' ', '|'),
      (damages, delimiter) => {
        let rows: (string | number)[][] = table.map((cells) => [...cells]);
        const header = [...names];
        for (const d of damages) {
          if (d.kind === 'scale') for (const cells of rows) cells[d.column] = Number(cells[d.column]) * d.by;
          else if (d.kind === 'fill') for (const cells of rows.slice(d.from)) cells[d.column] = d.with;
          else if (d.kind === 'leave out') {
            header.splice(d.column, 1);
            for (const cells of rows) cells.splice(d.column, 1);
          } else if (d.kind === 'again') rows = [...rows, ...rows.slice(d.from, d.from + d.rows)];
          else rows = [...rows.slice(0, d.from), ...rows.slice(d.from).reverse()];
        }
        const lines = [header, ...rows].map((cells) => cells.join(delimiter));
        survives(new TextEncoder().encode(lines.join('\n')));
      },
    ),
    { numRuns: 300 },
  );
}, 120_000);
