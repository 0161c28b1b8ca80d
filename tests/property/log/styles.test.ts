import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findPulls, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { toSi } from '../../../core/units/index.ts';
import { type LoggedTable, logDrive, randomTraits } from '../../support/log-generator/logger.ts';
import { createRandom } from '../../support/log-generator/random.ts';
import { roadScenario } from '../../support/log-generator/scenario.ts';
import { styledTable, type TableStyle } from '../../support/log-generator/styles.ts';

const style: fc.Arbitrary<TableStyle> = fc
  .record<TableStyle>({
    delimiter: fc.constantFrom(',', ';', '\t', '|', ' '),
    decimal: fc.constantFrom('.', ','),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r', 'mixed'),
    quotes: fc.constantFrom('none', 'all', 'needed'),
    units: fc.constantFrom('in-header', 'in-row', 'in-brackets'),
    preamble: fc.constantFrom(
      [],
      ['A log of an invented car'],
      ['Car: Fenmoor', 'Day: 14.03.2027', ''],
      ['# note', '# 12 channels'],
    ),
    time: fc.constantFrom('s', 'ms', 'us', 'min', 'clock', 'iso'),
    thousands: fc.constantFrom('', "'", '\u00a0'),
    encoding: fc.constantFrom('utf-8', 'utf-8-mark', 'utf-16le', 'utf-16be'),
    hasTrailingDelimiter: fc.boolean(),
    repeatsHeader: fc.boolean(),
    endsWithLineEnd: fc.boolean(),
  })
  .map((s) => ({
    ...s,
    // What no reader could tell apart is left out: bare decimal commas between commas, blanks as two things.
    quotes: s.delimiter === ',' && s.decimal === ',' && s.quotes === 'none' ? 'needed' : s.quotes,
    thousands: s.delimiter === ' ' && s.thousands === '\u00a0' ? '' : s.thousands,
    hasTrailingDelimiter: s.hasTrailingDelimiter && s.delimiter !== ' ',
  }));

function tableOf(seed: number): LoggedTable {
  const random = createRandom(seed);
  const traits = {
    ...randomTraits(random),
    jitter: 0,
    rate_Hz: 20,
    startTime_s: 12,
    has: { pedal: true, throttle: true, boost: true, speed: true, gear: true },
  };
  return logDrive(roadScenario(random).drive, traits, random);
}

const tables = [1, 2, 3].map(tableOf);

/** The first rows alone: what is told from the head is told from these. */
const short = tables.map((t) => ({
  ...t,
  columns: t.columns.map((c) => ({ ...c, values: c.values.slice(0, 150) })),
}));

it('a table comes back whole from any style it is written in', () => {
  fc.assert(
    fc.property(fc.constantFrom(...short), style, (table, how) => {
      const log = unwrap(readLog(styledTable(table, how), { file: 'a.csv' }));
      expect(log.channels.map((c) => c.quantity)).toEqual([
        'time',
        'engineSpeed',
        'vehicleSpeed',
        'pedal',
        'throttle',
        'boost',
        'gear',
      ]);
      table.columns.forEach((column, c) => {
        const channel = log.channels[c];
        expect(channel?.values.length).toBe(column.values.length);
        // Minutes in 16 digits come back to within a rounding; all else is exact up to the unit's own factor.
        const off = column.values.filter((value, i) => {
          const expected = column.unit === '' ? value : toSi(value, column.unit);
          return !(
            Math.abs((channel?.values[i] ?? Number.NaN) - expected) <=
            1e-9 * (1 + Math.abs(expected))
          );
        });
        expect(off, column.name).toEqual([]);
      });
    }),
    { numRuns: 200 },
  );
});

it('pulls do not depend on how the file is written', () => {
  const plain: TableStyle = {
    delimiter: ',',
    decimal: '.',
    lineEnd: '\n',
    quotes: 'none',
    units: 'in-header',
    preamble: [],
    time: 's',
    thousands: '',
    encoding: 'utf-8',
    hasTrailingDelimiter: false,
    repeatsHeader: false,
    endsWithLineEnd: true,
  };
  fc.assert(
    fc.property(fc.constantFrom(...tables), style, (table, how) => {
      const expected = findPulls(unwrap(readLog(styledTable(table, plain), { file: 'a.csv' }))).pulls;
      const found = findPulls(unwrap(readLog(styledTable(table, how), { file: 'a.csv' }))).pulls;
      expect(expected.length).toBeGreaterThan(0);
      expect(found.map((p) => [p.from, p.to, p.gear, p.complete])).toEqual(
        expected.map((p) => [p.from, p.to, p.gear, p.complete]),
      );
    }),
    { numRuns: 10 },
  );
});
