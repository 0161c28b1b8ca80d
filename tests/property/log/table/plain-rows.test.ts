import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

const digits = (most: number) => fc.stringMatching(new RegExp(`^[0-9]{1,${most}}$`));

/** Any spelling of a number that Number() takes and a logger may print. */
const numberText = fc.oneof(
  { weight: 3, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }).map(String) },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom('', '-', '+'), digits(6), digits(6))
      .map(([s, a, b]) => `${s}${a}.${b}`),
  },
  fc.tuple(fc.constantFrom('', '-', '+'), digits(20), digits(25)).map(([s, a, b]) => `${s}${a}.${b}`),
  fc.tuple(fc.constantFrom('', '-'), digits(19)).map(([s, a]) => s + a),
  fc
    .tuple(digits(4), digits(2), fc.constantFrom('e', 'E'), fc.constantFrom('', '-', '+'), digits(2))
    .map(([a, b, e, s, x]) => `${a}.${b}${e}${s}${x}`),
  digits(5).map((a) => `.${a}`),
  digits(5).map((a) => `${a}.`),
  fc.constantFrom(
    '0',
    '-0',
    '00',
    '007',
    '1e22',
    '1e23',
    '9007199254740993',
    '0.1',
    '1.7976931348623157e308',
    '5e-324',
    '2.2250738585072011e-308',
  ),
);

const padding = fc.constantFrom('', ' ', '  ');

it('every cell of a plain body is the very double that Number(text) gives', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(padding, numberText, padding), { minLength: 40, maxLength: 80 }),
      fc.constantFrom(',', ';', '\t', '|'),
      fc.boolean(),
      (cells, delimiter, isComma) => {
        const usesComma = isComma && delimiter !== ',';
        const texts = cells.map(([a, n, b]) => a + n + b);
        const body = texts
          .map((t, i) => [i, usesComma ? t.replace('.', ',') : t, usesComma ? '0,5' : '0.5'].join(delimiter))
          .join('\n');
        const log = unwrap(
          readLog(new TextEncoder().encode(`Time (s)${delimiter}Thing${delimiter}Other\n${body}\n`), {
            file: 'a',
          }),
        );
        const values = log.channels[1]?.values ?? new Float64Array();
        expect(values.length).toBe(texts.length);
        texts.forEach((t, i) => {
          // Infinite is no measurement: such a cell is flagged and NaN.
          const expected = Number.isFinite(Number(t)) ? Number(t) : Number.NaN;
          expect(Object.is(values[i], expected), `${t}: ${values[i]} against ${expected}`).toBe(true);
        });
      },
    ),
    { numRuns: 200 },
  );
});

it('the same rows give the same log in one piece and in pieces of any size', async () => {
  const { createLogReader } = await import('../../../../core/log/index.ts');
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 20 }),
      fc.constantFrom('\n', '\r\n', '\r'),
      (sizes, end) => {
        const rows = Array.from(
          { length: 12_000 },
          (_, i) => `${i / 100},${(i * 37) % 6000},${i % 50 === 7 ? 'n/a' : i % 90},"${i}.5"`,
        );
        const bytes = new TextEncoder().encode(`Time (s),RPM,Pedal (%),Other${end}${rows.join(end)}${end}`);
        const whole = unwrap(readLog(bytes, { file: 'a' }));
        const reader = createLogReader({ file: 'a' });
        // One chunk, filled anew for every piece: the reader must hold nothing of it.
        const chunk = new Uint8Array(7 * 5000);
        let at = 0;
        for (let k = 0; at < bytes.length; k++) {
          const piece = bytes.subarray(at, at + (sizes[k % sizes.length] ?? 1) * 7);
          chunk.fill(0x41).set(piece);
          reader.push(chunk.subarray(0, piece.length));
          at += piece.length;
        }
        const pieces = unwrap(reader.finish());
        expect(pieces.time.length).toBe(12_000);
        whole.channels.forEach((channel, c) => {
          expect(pieces.channels[c]?.values).toEqual(channel.values);
          expect(pieces.channels[c]?.flags).toEqual(channel.flags);
        });
      },
    ),
    { numRuns: 12 },
  );
});
