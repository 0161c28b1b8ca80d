import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findPulls, type Pull, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { convert } from '../../../core/units/index.ts';
import { type LoggedTable, logDrive, plainText, randomTraits } from '../../support/log-generator/logger.ts';
import { createRandom } from '../../support/log-generator/random.ts';
import { roadScenario } from '../../support/log-generator/scenario.ts';

const tables = [3, 5, 8, 13].map((seed): LoggedTable => {
  const random = createRandom(seed);
  const traits = {
    ...randomTraits(random),
    jitter: 0,
    rate_Hz: 100,
    speedEvery: 1,
    rpmStep: 1,
    pedalStep_percent: 0.1,
    has: { pedal: true, throttle: true, boost: true, speed: true, gear: false },
  };
  return logDrive(roadScenario(random).drive, traits, random);
});

const pullsOf = (table: LoggedTable): readonly Pull[] =>
  findPulls(unwrap(readLog(new TextEncoder().encode(plainText(table)), { file: 'a.csv' }))).pulls;

const originals = tables.map(pullsOf);

it('pulls stay where they are when the log is thinned to a slower rate', () => {
  fc.assert(
    fc.property(
      fc.nat(tables.length - 1),
      fc.integer({ min: 2, max: 10 }),
      fc.nat(9),
      (which, keep, offset) => {
        const table = tables[which];
        const expected = originals[which] ?? [];
        if (!table) return;
        const thinned = {
          ...table,
          columns: table.columns.map((c) => ({
            ...c,
            values: c.values.filter((_, i) => i % keep === offset % keep),
          })),
        };
        const found = pullsOf(thinned);
        expect(expected.length).toBeGreaterThan(0);
        expect(found.length).toBe(expected.length);
        found.forEach((pull, i) => {
          // A sample at the new rate either side, and one of pedal noise.
          const step = (keep + 1) / 100 + 0.05;
          expect(Math.abs(pull.start_s - (expected[i]?.start_s ?? 0))).toBeLessThanOrEqual(step);
          expect(Math.abs(pull.end_s - (expected[i]?.end_s ?? 0))).toBeLessThanOrEqual(step);
        });
      },
    ),
    // One noisy sample beside the lift cost a slow log a tenth of a second.
    { numRuns: 30, examples: [[3, 10, 2]] },
  );
});

it('pulls do not depend on the units of the file', () => {
  const units = fc.record({
    'Engine Speed': fc.constantFrom('rpm', 'rad/s'),
    'Vehicle Speed': fc.constantFrom('km/h', 'mph', 'm/s'),
    Pedal: fc.constantFrom('%', '1'),
    Throttle: fc.constantFrom('%', '1'),
    Boost: fc.constantFrom('kPa', 'psi', 'bar', 'mbar'),
  });
  fc.assert(
    fc.property(fc.nat(tables.length - 1), units, (which, chosen) => {
      const table = tables[which];
      if (!table) return;
      const converted = {
        ...table,
        columns: table.columns.map((c) => {
          const unit = (chosen as Record<string, string>)[c.name];
          return unit === undefined
            ? c
            : { ...c, unit, values: c.values.map((v) => convert(v, c.unit, unit)) };
        }),
      };
      expect(pullsOf(converted).map((p) => [p.from, p.to, p.complete])).toEqual(
        (originals[which] ?? []).map((p) => [p.from, p.to, p.complete]),
      );
    }),
    { numRuns: 25 },
  );
});
