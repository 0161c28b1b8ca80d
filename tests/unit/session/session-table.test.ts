import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  applyEdit,
  createSession,
  LimitsSchema,
  largestOf,
  limitOfTable,
  openChangeOf,
  readSession,
  type SessionState,
  type SessionTable,
  SessionTableSchema,
} from '../../../core/session/index.ts';

const now = '2027-03-14T10:00:00.000Z';
const source = 'Spark (deg)\r\n"kPa"\t2000\t4000\r\n60\t 20.0\t25.50\r\n180\t8.0\t12.0\r\n\r\nkept\t\r\n';
const table = SessionTableSchema.parse({
  id: 't1',
  name: 'Spark',
  kind: 'spark',
  unit: 'deg',
  axes: { engineSpeed: 'across', load: { kind: 'absolute', unit: 'kPa' } },
  readAt: now,
  asRead: source,
  recorded: source,
  now: source,
});
const start: SessionState = {
  session: createSession({ id: 's', baselineId: 'e0', name: 'Fenmoor', now, car: { mass_kg: 1400 } }),
  runs: {},
};
const withTable = unwrap(applyEdit(start, { type: 'table.add', table }));
const set = (patch: Partial<SessionTable>) =>
  applyEdit(withTable, { type: 'table.set', tableId: 't1', patch });
const codes = (result: ReturnType<typeof applyEdit>) => (result.ok ? [] : result.problems.map((p) => p.code));

describe('tables of a session', () => {
  it('keep their text byte for byte through the session file', () => {
    const read = unwrap(readSession(JSON.parse(JSON.stringify(withTable.session)))).session;
    expect(read.tables[0]?.asRead).toBe(source);
    expect(read.tables).toEqual(withTable.session.tables);
  });
  it('a session written before there were tables has none', () => {
    const { tables: _, ...old } = start.session;
    expect(unwrap(readSession(old)).session.tables).toEqual([]);
  });
  it('a step is an edit that leaves the state before untouched, so that undo is keeping it', () => {
    const frozen = structuredClone(withTable);
    const stepped = unwrap(set({ now: source.replace('12.0', '13.0') }));
    expect(withTable).toEqual(frozen);
    expect(stepped.session.tables[0]).toMatchObject({ asRead: source, recorded: source });
  });
  it('a text with other axes, another shape or a dangerous cell is refused', () => {
    expect(codes(set({ now: source.replace('4000', '4500') }))).toEqual(['tables/axes-differ']);
    expect(codes(set({ now: '\t2000\t4000\n60\t1\t2' }))).toEqual(['tables/shape-differs']);
    expect(codes(set({ now: source.replace('12.0', '120') }))).toEqual(['tables/cell-not-plausible']);
    expect(codes(set({ kind: 'lambda', unit: 'lambda' }))[0]).toBe('tables/cell-not-plausible');
  });
  it('one that is not there can be neither changed nor removed', () => {
    expect(codes(applyEdit(start, { type: 'table.set', tableId: 't9', patch: {} }))).toEqual([
      'session/no-table',
    ]);
    expect(codes(applyEdit(start, { type: 'table.remove', tableId: 't9' }))).toEqual(['session/no-table']);
    expect(unwrap(applyEdit(withTable, { type: 'table.remove', tableId: 't1' })).session.tables).toEqual([]);
  });
  it('what changed since it was written down is cells with from and to, the largest first in mind', () => {
    expect(openChangeOf(table)).toBeNull();
    const change = openChangeOf({
      ...table,
      now: source.replace('12.0', '13.0').replace('\t8.0', '\t8.5'),
    });
    expect(change?.cells).toEqual([
      { row: 1, column: 0, from: 8, to: 8.5 },
      { row: 1, column: 1, from: 12, to: 13 },
    ]);
    expect(change && largestOf(change)).toMatchObject({ from: 12, to: 13 });
  });
});

describe('the limit of a table', () => {
  const limits = LimitsSchema.parse({ boostCeiling_kPa: 120, mapCeiling_kPa: 215 });
  const boost = { ...table, kind: 'boost', unit: 'bar' } as const;
  it('is its own, else the lower of ceiling and sensor, else the leanest mixture', () => {
    expect(limitOfTable({ ...boost, limit: 1.05 }, limits, 100e3)).toBe(1.05);
    expect(limitOfTable(boost, limits, 100e3)).toBe(1.15);
    expect(limitOfTable({ ...boost, unit: 'kPa', isAbsolute: true }, limits, 100e3)).toBe(215);
    expect(limitOfTable({ ...table, kind: 'lambda', unit: 'AFR' }, limits, 100e3)).toBeCloseTo(13.23, 9);
  });
  it('is unknown for spark until the tuner says it', () => {
    expect(limitOfTable(table, limits, 100e3)).toBeNull();
  });
});
