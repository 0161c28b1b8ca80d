import fc from 'fast-check';
import { expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  differenceView,
  maskOf,
  readTable,
  setCells,
  stepCells,
  writeTable,
} from '../../../core/tables/index.ts';

/** Any table as an editor writes it, 2 to 8 by 2 to 8. */
const written = fc
  .record({
    rows: fc.integer({ min: 2, max: 8 }),
    columns: fc.integer({ min: 2, max: 8 }),
    tenths: fc.array(fc.integer({ min: -200, max: 600 }), { minLength: 64, maxLength: 64 }),
    delimiter: fc.constantFrom('\t', ';', ','),
    ending: fc.constantFrom('\n', '\r\n'),
    closed: fc.boolean(),
    comma: fc.boolean(),
  })
  .map(({ rows, columns, tenths, delimiter, ending, closed, comma }) => {
    const number = (n: number) => {
      const text = (n / 10).toFixed(1);
      return comma && delimiter !== ',' ? text.replace('.', ',') : text;
    };
    const lines = [['', ...Array.from({ length: columns }, (_, i) => `${1000 + 500 * i}`)]];
    for (let r = 0; r < rows; r++)
      lines.push([
        `${50 + 20 * r}`,
        ...Array.from({ length: columns }, (_, c) => number(tenths[r * 8 + c] ?? 0)),
      ]);
    return lines.map((l) => l.join(delimiter)).join(ending) + (closed ? ending : '');
  });
const mask = (rows: number, columns: number, bits: readonly boolean[]) =>
  Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => bits[r * 8 + c] ?? false),
  );
const bits = fc.array(fc.boolean(), { minLength: 64, maxLength: 64 });

it('a table that is read and written is the same text, byte for byte', () => {
  fc.assert(
    fc.property(written, (text) => {
      expect(writeTable(unwrap(readTable(text)))).toBe(text);
    }),
    { seed: 31 },
  );
});

it('a step keeps to covered cells, to its size, to the limit and to the neighbours, and survives the text', () => {
  fc.assert(
    fc.property(
      written,
      bits,
      fc.constantFrom(1, 0.5, -0.7, 3),
      fc.integer({ min: 0, max: 3 }),
      fc.integer({ min: -10, max: 60 }),
      fc.integer({ min: 1, max: 8 }),
      (text, flags, step, edge, limit, neighbourLimit) => {
        const before = unwrap(readTable(text));
        const covered = mask(before.down.length, before.across.length, flags);
        const { table: after } = unwrap(stepCells(before, { covered, step, edge, limit, neighbourLimit }));
        const up = Math.sign(step);
        for (const [r, line] of before.values.entries())
          for (const [c, old] of line.entries()) {
            const now = after.values[r]?.[c] ?? Number.NaN;
            const rise = up * (now - old);
            expect(rise).toBeGreaterThanOrEqual(-1e-9);
            expect(rise).toBeLessThanOrEqual(Math.abs(step) + 1e-9);
            if (!covered[r]?.[c]) expect(now).toBe(old);
            if (rise > 1e-9) expect(up * (now - limit)).toBeLessThanOrEqual(1e-9);
            for (const [dr, dc] of [
              [0, 1],
              [1, 0],
            ] as const) {
              const [other, otherOld] = [after.values[r + dr]?.[c + dc], before.values[r + dr]?.[c + dc]];
              if (other === undefined || otherOld === undefined) continue;
              const room = Math.max(neighbourLimit, Math.abs(old - otherOld)) + 1e-9;
              expect(Math.abs(now - other)).toBeLessThanOrEqual(room);
            }
          }
        const again = unwrap(readTable(writeTable(after)));
        expect(again.values).toEqual(after.values);
        const back = unwrap(differenceView(before, again));
        expect(back.changes.every(({ row, column }) => covered[row]?.[column])).toBe(true);
      },
    ),
    { seed: 32, numRuns: 150 },
  );
});

it('steps that pile up never part two neighbours by more than one step beyond what was written down', () => {
  fc.assert(
    fc.property(written, bits, bits, fc.constantFrom(1, 0.5, -0.7), (text, first, second, step) => {
      const since = unwrap(readTable(text));
      const size = [since.down.length, since.across.length] as const;
      let table = since;
      for (const flags of [first, second, first, second])
        table = unwrap(
          stepCells(table, {
            covered: mask(...size, flags),
            step,
            edge: 0,
            limit: null,
            neighbourLimit: null,
            since,
          }),
        ).table;
      for (const [r, line] of table.values.entries())
        for (const [c, value] of line.entries())
          for (const [dr, dc] of [
            [0, 1],
            [1, 0],
          ] as const) {
            const other = table.values[r + dr]?.[c + dc];
            const moved = value - (since.values[r]?.[c] ?? 0);
            const otherMoved = (other ?? Number.NaN) - (since.values[r + dr]?.[c + dc] ?? 0);
            if (other === undefined) continue;
            expect(Math.abs(moved - otherMoved)).toBeLessThanOrEqual(Math.abs(step) + 1e-9);
          }
    }),
    { seed: 33, numRuns: 150 },
  );
});

it('a value set by hand changes the text of the chosen cells alone', () => {
  fc.assert(
    fc.property(written, bits, fc.integer({ min: -300, max: 700 }), (text, flags, tenths) => {
      const table = unwrap(readTable(text));
      const chosen = maskOf(table, (r, c) => flags[r * 8 + c] ?? false);
      const set = unwrap(setCells(table, chosen, tenths / 10, null));
      for (const [r, row] of set.text.rows.entries())
        for (const [c, raw] of row.cells.entries())
          if (!chosen[r - table.origin.row]?.[c - table.origin.column])
            expect(raw).toBe(table.text.rows[r]?.cells[c]);
      expect(writeTable(set).length - writeTable(table).length).toBe(
        set.text.rows.flatMap((r) => r.cells).join('').length -
          table.text.rows.flatMap((r) => r.cells).join('').length,
      );
    }),
    { seed: 34 },
  );
});
