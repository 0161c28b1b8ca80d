import { z } from 'zod';
import { fail, ok, type Result } from '../result/index.ts';
import {
  axisFaults,
  type CellMeaning,
  cellFromSi,
  changesBetween,
  dangerousCells,
  type EcuTable,
  loadKinds,
  readTable,
  sameAxes,
  type TableAxes,
  tableKinds,
  tableUnits,
} from '../tables/index.ts';
import { expectsUnit, units } from '../units/index.ts';
import type { Limits } from './limits.ts';
import { IdSchema } from './run-record.ts';

const AxesSchema = z.looseObject({
  engineSpeed: z.enum(['across', 'down']),
  load: z.looseObject({
    kind: z.enum(loadKinds),
    unit: z.string().refine((id) => units.has(id), expectsUnit),
  }),
});

const meaning = {
  kind: z.enum(tableKinds),
  unit: z.enum(tableUnits),
  /** Boost written as manifold pressure. */
  isAbsolute: z.boolean().default(false),
  axes: AxesSchema,
};

/** Text of a table: 64 by 64 cells of twelve characters, and its title lines. */
const text = z.string().min(1).max(60_000);

/** A table of the engine control as it was read, and as it stands now. Texts are kept byte for byte. */
export const SessionTableSchema = z.looseObject({
  id: IdSchema,
  name: z.string().min(1).max(100),
  ...meaning,
  /** File it was read from; empty for one that was pasted. */
  fileName: z.string().max(260).default(''),
  /** Of that file; `latin1` is byte for letter. */
  encoding: z.enum(['utf-8', 'latin1']).default('utf-8'),
  readAt: z.iso.datetime(),
  /** Never changes. */
  asRead: text,
  /** As last written into the ledger, or as read. */
  recorded: text,
  now: text,
  /** Most that any cell may get, in the table's unit; null takes the session's limit, where there is one. */
  limit: z.number().nullable().default(null),
});
export type SessionTable = z.infer<typeof SessionTableSchema>;

/** What a change did to a table: enough to read it without the table. */
export const TableChangeSchema = z.looseObject({
  tableId: IdSchema,
  name: z.string().max(100),
  ...meaning,
  across: z.array(z.number()).max(256),
  down: z.array(z.number()).max(256),
  cells: z
    .array(z.looseObject({ row: z.int().min(0), column: z.int().min(0), from: z.number(), to: z.number() }))
    .max(4096),
});
export type TableChange = z.infer<typeof TableChangeSchema>;

/** The meaning of the cells, as core/tables takes it. */
export function meaningOf({ kind, unit, isAbsolute }: CellMeaning): CellMeaning {
  return { kind, unit, isAbsolute };
}

/**
 * Reads a table for what it is said to be. The axes and every cell are looked at: what no engine runs at is refused.
 *
 * Errors: those of readTable; tables/no-engine-speed, tables/load-not-plausible; tables/cell-not-plausible,
 *         tables/cell-dangerous, one a cell, 20 at most.
 */
export function readMeant(
  source: string,
  what: CellMeaning & { readonly axes: TableAxes },
  ambientPressure: number,
): Result<EcuTable> {
  const table = readTable(source);
  if (!table.ok) return table;
  const faults = axisFaults(table.value, what.axes);
  // Axes that are wrong make every cell look wrong.
  if (faults.length === 0) faults.push(...dangerousCells(table.value, what, what.axes, ambientPressure));
  const [first, ...rest] = faults;
  return first ? fail(first, ...rest.slice(0, 19)) : table;
}

/**
 * Whether a text may stand as this table's: read well, no dangerous cell, and the axes it was read with.
 *
 * Errors: those of readMeant; tables/shape-differs, tables/axes-differ.
 */
export function checkTable(table: SessionTable, ambientPressure: number): Result<null> {
  for (const source of new Set([table.asRead, table.recorded, table.now])) {
    const read = readMeant(source, table, ambientPressure);
    if (!read.ok) return read;
    const first = readTable(table.asRead);
    if (!first.ok) return first;
    const same = sameAxes(first.value, read.value);
    if (!same.ok) return same;
  }
  return ok(null);
}

/**
 * The most that a cell may get, in the table's own unit: the table's own limit, else the session's boost ceiling, end of
 * the manifold pressure sensor, or leanest mixture. Null where nobody has said.
 */
export function limitOfTable(table: SessionTable, limits: Limits, ambientPressure: number): number | null {
  if (table.limit !== null) return table.limit;
  const most = sessionLimit(table, limits, ambientPressure);
  // Rounded down: a limit that is worked out must not let a digit more through.
  return most === null ? null : Math.floor(cellFromSi(most, table, ambientPressure) * 1e4 + 1e-6) / 1e4;
}

function sessionLimit({ kind }: SessionTable, limits: Limits, ambientPressure: number): number | null {
  if (kind === 'spark') return null;
  if (kind === 'lambda') return limits.leanestLambda;
  const ceilings = [
    ...(limits.boostCeiling_kPa === null ? [] : [limits.boostCeiling_kPa * 1e3]),
    ...(limits.mapCeiling_kPa === null ? [] : [limits.mapCeiling_kPa * 1e3 - ambientPressure]),
  ];
  return ceilings.length > 0 ? Math.min(...ceilings) : null;
}

/** What changed since the table was last written down; null where nothing did. */
export function openChangeOf(table: SessionTable): TableChange | null {
  const [before, after] = [readTable(table.recorded), readTable(table.now)];
  if (!before.ok || !after.ok) return null;
  const cells = changesBetween(before.value, after.value);
  if (cells.length === 0) return null;
  const { id: tableId, name, kind, unit, isAbsolute, axes } = table;
  return {
    tableId,
    name,
    kind,
    unit,
    isAbsolute,
    axes,
    across: [...before.value.across],
    down: [...before.value.down],
    cells: cells.map((c) => ({ ...c })),
  };
}

/** The cell of a change that moved furthest: what the entry is called after. */
export function largestOf(change: TableChange): TableChange['cells'][number] | null {
  return change.cells.reduce<TableChange['cells'][number] | null>(
    (most, cell) =>
      most === null || Math.abs(cell.to - cell.from) > Math.abs(most.to - most.from) ? cell : most,
    null,
  );
}
