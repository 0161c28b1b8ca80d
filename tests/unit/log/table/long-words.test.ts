import { describe, expect, it } from 'vitest';
import { readLog, whyNoLog } from '../../../../core/log/index.ts';

/** Each repeated to a hundred thousand characters: what looks like the begin of something and never becomes it. */
const parts = [
  '9',
  '0',
  '1.',
  '1 ',
  '1:2',
  '1,1',
  '2026-',
  ' ',
  '-',
  '+',
  '.',
  '_',
  'e',
  'T',
  'a ',
  'aB',
  '°',
  '/',
  '(',
  '"',
  "'",
  ';',
  '="',
  'ä',
  'あ',
  'rpm ',
  'rate ',
  'sample ',
];
const places = ['a cell', 'a time', 'a name', 'a unit', 'the preamble'] as const;

function logWith(long: string, place: (typeof places)[number]): Uint8Array {
  const at = (here: (typeof places)[number], usual: string) => (place === here ? long : usual);
  const rows = Array.from({ length: 300 }, (_, i) => [
    i === 150 ? at('a time', '7.5') : `${i / 20}`,
    `${2300 + 10 * i}`,
    i === 150 ? at('a cell', '100') : i > 60 && i < 200 ? '100' : '12',
    `${40 + i / 10}`,
  ]);
  const lines = [['Time (s)', 'Engine speed (rpm)', at('a name', 'Pedal (%)'), 'Speed (km/h)'], ...rows];
  if (place === 'a unit') lines.splice(1, 0, ['s', 'rpm', long, 'km/h']);
  const preamble = place === 'the preamble' ? `${long}\n` : '';
  return new TextEncoder().encode(preamble + lines.map((cells) => cells.join(',')).join('\n'));
}

// A pattern that looks again from each character on would be at it for an hour: the runner's limit ends it.
describe.each(places)('%s of a hundred thousand characters', (place) => {
  it.each(parts)('as a row of %o does not hold up the log around it', (part) => {
    const bytes = logWith(part.repeat(Math.ceil(100_000 / part.length)), place);
    const read = readLog(bytes, { file: 'long.csv' });
    const problem = read.ok ? null : read.problems[0];
    expect(problem?.where?.file ?? 'long.csv').toBe('long.csv');
    if (read.ok) expect(read.value.time.length).toBeGreaterThan(100);
    whyNoLog(bytes, 'long.csv');
  });
});
