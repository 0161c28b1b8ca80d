import fc from 'fast-check';
import { expect, it } from 'vitest';
import { BlockReader, createLogReader, type Log, readLog, roomOfBlock } from '../../../../core/log/index.ts';
import { type Result, unwrap } from '../../../../core/result/index.ts';

const header = 'Time (s),RPM,Pedal (%),Gear,Notes';

/** Rows as loggers write them on a bad day, by the number of the row. */
const oddRows: readonly ((i: number) => string)[] = [
  (i) => `${i / 100},${2000 + (i % 900)},n/a,3,0`,
  (i) => `${i / 100},,${i % 90},,0`,
  (i) => `${i / 100},"${2000 + (i % 900)}",${i % 90},3,"1"`,
  (i) => `${i / 100},${2000 + (i % 900)},${i % 90},3,bridge`,
  (i) => `${i / 100},2e3,${i % 90}.123456789012345678,3,-0`,
  () => header,
  () => ',,,,',
  () => '',
  () => '# a remark',
  (i) => `${i / 100},${2000 + (i % 900)},${i % 90}`,
  (i) => `${i / 100},${2000 + (i % 900)},${i % 90},3,0,7`,
];

type Odd = { readonly at: number; readonly kind: number; readonly count: number };

function logText(
  rows: number,
  odds: readonly Odd[],
  lineEnds: readonly string[],
  isEnded: boolean,
): Uint8Array {
  const lines = [
    header,
    ...Array.from({ length: rows }, (_, i) => `${i / 100},${2000 + (i % 900)},${i % 90},3,0`),
  ];
  for (const { at, kind, count } of odds)
    for (let k = at; k < Math.min(rows, at + count); k++) lines[k + 1] = oddRows[kind]?.(k) ?? '';
  const text = lines.map((line, i) => line + (lineEnds[i % lineEnds.length] ?? '\n')).join('');
  return new TextEncoder().encode(isEnded ? text : text.trimEnd());
}

/** As two workers do it: parts of whole rows, some read apart. `apart` counts the rows that were. */
function readDealt(bytes: Uint8Array, sizes: readonly number[], isApart: readonly boolean[]) {
  const reader = createLogReader({ file: 'a', size: bytes.length });
  let apart = 0;
  let isAtRow = false;
  for (let at = 0, k = 0; at < bytes.length; k++) {
    const size = sizes[k % sizes.length] ?? 1;
    const end = bytes.subarray(at, at + size).lastIndexOf(10) + 1;
    // A copy, filled anew afterwards, as the host does with its parts.
    const part = bytes.slice(at, at + (end > 0 ? end : size));
    at += part.length;
    const style = reader.blockStyle();
    if (style && end > 0 && isAtRow && isApart[k % isApart.length]) {
      const numbers = new Float64Array(roomOfBlock(style, part.length)).fill(7);
      const block = new BlockReader(style).read(part, numbers);
      apart += block.rows;
      reader.pushBlock(block);
      numbers.fill(9);
      if (block.size_bytes < part.length) reader.push(part.subarray(block.size_bytes));
    } else reader.push(part);
    part.fill(0x41);
    isAtRow = end > 0;
  }
  return { result: reader.finish(), apart };
}

function expectSame(found: Result<Log>, expected: Result<Log>): void {
  if (!expected.ok) {
    expect(found).toEqual(expected);
    return;
  }
  const [a, b] = [unwrap(found), expected.value];
  expect({ ...a, channels: [] }).toEqual({ ...b, channels: [] });
  b.channels.forEach((channel, c) => {
    expect({ ...a.channels[c], values: 0, flags: 0 }).toEqual({ ...channel, values: 0, flags: 0 });
    const { values = new Float64Array(), flags = new Uint8Array() } = a.channels[c] ?? {};
    expect(values).toHaveLength(channel.values.length);
    expect(channel.values.findIndex((v, i) => !Object.is(v, values[i]))).toBe(-1);
    expect(channel.flags.findIndex((f, i) => f !== flags[i])).toBe(-1);
  });
}

const rows = 24_000;
const odd = fc.record<Odd>({
  // Behind the head as well as in it.
  at: fc.integer({ min: 0, max: rows - 1 }),
  kind: fc.integer({ min: 0, max: oddRows.length - 1 }),
  count: fc.constantFrom(1, 1, 2, 50, 5000),
});

it('a log whose rows are read in part by another gives what one reader gives', () => {
  let apart = 0;
  fc.assert(
    fc.property(
      fc.array(odd, { maxLength: 6 }),
      fc.constantFrom(['\n'], ['\r\n'], ['\r\n', '\n', '\n'], ['\r', '\n'], ['\r']),
      fc.boolean(),
      fc.array(fc.integer({ min: 1, max: 90_000 }), { minLength: 1, maxLength: 7 }),
      fc.array(fc.boolean(), { minLength: 1, maxLength: 5 }),
      (odds, lineEnds, isEnded, sizes, isApart) => {
        const bytes = logText(rows, odds, lineEnds, isEnded);
        const usable = sizes.some((s) => s > 2000) ? sizes : [...sizes, 40_000];
        const dealt = readDealt(bytes, usable, isApart);
        apart += dealt.apart;
        expectSame(dealt.result, readLog(bytes, { file: 'a' }));
      },
    ),
    { numRuns: 40 },
  );
  expect(apart).toBeGreaterThan(rows);
});

it.each(oddRows.map((row, kind) => [row(12_345), kind] as const))(
  'a row “%s” among rows that are read apart is what it is to one reader',
  (_, kind) => {
    const odds = [
      { at: 15_000, kind, count: 1 },
      { at: 18_000, kind, count: 30 },
    ];
    const bytes = logText(rows, odds, ['\n'], true);
    const dealt = readDealt(bytes, [40_000], [true]);
    expect(dealt.apart).toBeGreaterThan(rows / 4);
    expectSame(dealt.result, readLog(bytes, { file: 'a' }));
  },
);

it('rows read apart count in the line that a problem names', () => {
  const odds = [{ at: 20_000, kind: 5, count: 1 }];
  const log = unwrap(readDealt(logText(rows, odds, ['\n'], true), [40_000], [true]).result);
  expect(log.warnings).toContainEqual({
    code: 'log/header-repeated',
    facts: { count: 1, firstLine: 20_002 },
  });
});

it('a row that did not count leaves nothing behind for those read apart', () => {
  const bytes = logText(rows, [{ at: 20_000, kind: 6, count: 1 }], ['\n'], true);
  const text = new TextDecoder().decode(bytes);
  const { result, apart } = readDealt(bytes, [text.indexOf(',,,,') + 5, bytes.length], [false, true]);
  expect(apart).toBe(rows - 20_001);
  expectSame(result, readLog(bytes, { file: 'a' }));
});

it('a last number that was cut is told from the rows before it, which were read apart', () => {
  const lines = Array.from({ length: rows }, (_, i) => `${i / 100},2000,50,${i < 18_000 ? 3 : 1234}`);
  const text = `Time (s),RPM,Pedal (%),Counter\n${lines.join('\n')}`;
  const bytes = new TextEncoder().encode(text.slice(0, -2));
  const { result } = readDealt(bytes, [40_000], [false, true]);
  expect(unwrap(result).warnings).toEqual([{ code: 'log/last-row-cut', facts: { line: rows + 1 } }]);
  const last = bytes.lastIndexOf(10) + 1;
  const apart = readDealt(bytes, [270_000, last - 270_000, 40_000], [false, true, false]);
  expect(apart.apart).toBeGreaterThan(6000);
  expectSame(apart.result, result);
});
