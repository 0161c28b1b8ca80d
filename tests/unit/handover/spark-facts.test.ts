import { describe, expect, it } from 'vitest';
import { sparkTableFacts } from '../../../core/handover/index.ts';
import { type Entry, type Session, SessionTableSchema } from '../../../core/session/index.ts';

const asRead = 'x\t2000\t4000\n0.0\t20.0\t22.0\n0.6\t15.0\t17.0\n1.0\t11.0\t12.5\n';
const asLeft = 'x\t2000\t4000\n0.0\t20.0\t22.0\n0.6\t15.0\t17.5\n1.0\t12.0\t12.0\n';
const turned = (text: string) => {
  const rows = text
    .trim()
    .split('\n')
    .map((line) => line.split('\t'));
  return `${(rows[0] ?? []).map((_, c) => rows.map((row) => row[c]).join('\t')).join('\n')}\n`;
};

function session(before: string, after: string, isAcross: boolean, more: object = {}): Session {
  const table = SessionTableSchema.parse({
    id: 'spark',
    name: 'Spark, hot',
    kind: 'spark',
    unit: 'deg',
    axes: { engineSpeed: isAcross ? 'across' : 'down', load: { kind: 'gauge', unit: 'bar' } },
    readAt: '2027-03-14T09:00:00.000Z',
    asRead: before,
    recorded: after,
    now: after,
    ...more,
  });
  const entry = (id: string, state: 'kept' | 'dropped', hasCells: boolean) =>
    ({
      id,
      kind: 'spark',
      state,
      change: { from: null, to: { value: 1, unit: 'deg' }, where: '', ...(hasCells ? { table: {} } : {}) },
    }) as unknown as Entry;
  const ledger = [entry('a', 'kept', true), entry('b', 'kept', false), entry('c', 'dropped', false)];
  return { tables: [table], ledger } as unknown as Session;
}

describe('the spark table as left', () => {
  it('tells every cell that differs, a line for each load', () => {
    const [facts] = sparkTableFacts(session(asRead, asLeft, true));
    expect(facts).toMatchObject({
      engineSpeed_rpm: [2000, 4000],
      load: { kind: 'gauge', unit: 'bar', values: [0, 0.6, 1] },
      change_deg: [
        [0, 0],
        [0, 0.5],
        [1, -0.5],
      ],
      asLeft_deg: [
        [20, 22],
        [15, 17.5],
        [12, 12],
      ],
      cells: 3,
      isInLedger: true,
    });
  });

  it('reads the same whichever way the control writes it', () => {
    const way = sparkTableFacts(session(asRead, asLeft, true));
    expect(sparkTableFacts(session(turned(asRead), turned(asLeft), false))).toEqual(way);
  });

  it('names kept changes that were noted without cells, and a change that nobody noted', () => {
    expect(sparkTableFacts(session(asRead, asLeft, true))[0]?.changesWithout).toEqual([1]);
    expect(sparkTableFacts(session(asRead, asLeft, true, { recorded: asRead }))[0]?.isInLedger).toBe(false);
  });

  it('is nothing where no table was kept', () => {
    expect(sparkTableFacts({ tables: [], ledger: [] } as unknown as Session)).toEqual([]);
  });
});
