import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findPulls, readLog } from '../../../core/log/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';

const show = createShow('en', metricUnits);

/** Reads, finds pulls, and puts any problem into words: none of it may throw. */
function survives(bytes: Uint8Array): void {
  const result = readLog(bytes, { file: 'any.csv' });
  if (result.ok) {
    expect(result.value.segments.length).toBeGreaterThan(0);
    findPulls(result.value);
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
