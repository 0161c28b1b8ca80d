import { describe, expect, it } from 'vitest';
import { readLog } from '../../../../core/log/index.ts';
import {
  CarSchema,
  type CoastDownReport,
  coastDownReport,
  findRolls,
  type LoggedRoll,
  rollsIn,
} from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import { rolledLog, rolledTruth } from '../../../support/rolled-log.ts';

const car = CarSchema.parse({ mass_kg: rolledTruth.mass, wheelInertia_kg_m2: 0 });
const forceOf = (v: number) => rolledTruth.a + rolledTruth.b * v + rolledTruth.c * v * v;

type Rolled = NonNullable<Parameters<typeof rolledLog>[0]>;

/** Each log with the ways that its rolls went. */
function reportOf(...logs: Rolled[]): CoastDownReport {
  const rolls = logs.flatMap((set, k): LoggedRoll[] => {
    const ways = set.ways ?? [1, -1];
    const log = unwrap(
      readLog(new TextEncoder().encode(rolledLog({ ...set, ways })), { file: `${k + 1}.csv` }),
    );
    return rollsIn(log, findRolls(log)).map((roll, n) => ({ ...roll, way: ways[n] ?? 1 }));
  });
  return unwrap(coastDownReport(rolls, car));
}

const said = (report: CoastDownReport, code: string) => report.notes.find((n) => n.code === code);

describe('rolls of several logs', () => {
  it('out in one and back in the next give what one log with both gives', () => {
    const apart = reportOf({ ways: [1] }, { ways: [-1] });
    const together = reportOf({ ways: [1, -1] });
    expect(apart.rolls).toBe(2);
    expect(apart.roadLoad.a_N).toBeCloseTo(together.roadLoad.a_N, 1);
    expect(apart.roadLoad.c_N_s2_m2).toBeCloseTo(together.roadLoad.c_N_s2_m2, 4);
    for (const { speed, force } of apart.force)
      expect(Math.abs(force / forceOf(speed) - 1)).toBeLessThan(0.01);
  });

  it('nothing is said of logs that agree', () => {
    expect(said(reportOf({}, {}), 'power/coast-down-logs-differ')).toBeUndefined();
  });

  it('wind that came up shows as more force one way and less the other', () => {
    const report = reportOf({}, { wind: 2 });
    expect(said(report, 'power/coast-down-logs-differ')?.facts).toMatchObject({
      file: '1.csv',
      other: '2.csv',
      kind: 'against',
    });
    // The mean of a calm and a windy log still holds the truth, less w^2 c.
    const at = report.force[1];
    expect(Math.abs((at?.force ?? 0) - forceOf(at?.speed ?? 0))).toBeLessThan(at?.half ?? 0);
  });

  it('another mass shows alike both ways', () => {
    const { facts } = said(reportOf({}, { mass: 1510 }), 'power/coast-down-logs-differ') ?? { facts: {} };
    expect(facts).toMatchObject({ kind: 'alike' });
    // Heavier by 4 %, so the car seems held back by 4 % less at the middle speed of 19 m/s.
    const expected = forceOf(19) * (1450 / 1510 - 1);
    expect(Math.abs((facts as { force: number }).force / expected - 1)).toBeLessThan(0.25);
  });

  it('where one way alone tells, no more is claimed', () => {
    const report = reportOf({}, { ways: [1], wind: 3 });
    expect(said(report, 'power/coast-down-logs-differ')?.facts).toMatchObject({ kind: 'one-way' });
  });
});

describe('a force beyond the speeds that were rolled', () => {
  it('is marked, has the wider interval, and a note names what was rolled', () => {
    const report = reportOf({ fastest: 30 });
    expect(report.force.map((f) => f.isRolled)).toEqual([true, true, false]);
    const share = report.force.map((f) => f.half / f.force);
    expect(share[2]).toBeGreaterThan(share[1] ?? 0);
    const { facts } = said(report, 'power/coast-down-beyond') ?? { facts: {} };
    expect((facts as { to: number }).to).toBeCloseTo(30, 0);
  });

  it('is told without a mark inside them', () => {
    const report = reportOf({ fastest: 43 });
    expect(report.force.every((f) => f.isRolled)).toBe(true);
    expect(said(report, 'power/coast-down-beyond')).toBeUndefined();
  });
});
