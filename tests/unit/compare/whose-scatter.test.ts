import { describe, expect, it } from 'vitest';
import { earlierDay } from '../../../core/compare/levels/earlier-day.ts';
import { oddPull } from '../../../core/compare/levels/outliers.ts';
import { poolOf } from '../../../core/compare/levels/pool.ts';

const judged = (levels: readonly number[]) => ({ levels, isJudged: true });
const other = (levels: readonly number[]) => ({ levels, isJudged: false });

describe('whose scatter tells how pulls repeat', () => {
  it('all entries that scatter alike, but none of one pull', () => {
    const pool = poolOf([
      judged([0, 0.004, -0.003]),
      judged([0.02, 0.025, 0.018]),
      other([0.05, 0.046, 0.052]),
      other([0.07]),
    ]);
    expect(pool).toEqual({ taken: [true, true, true, false], standsAlone: null });
  });

  it('not an entry that was driven far rougher than the rest', () => {
    const pool = poolOf([
      judged([0, 0.004, -0.003]),
      judged([0.02, 0.025, 0.018]),
      other([0.05, 0.11, -0.02]),
      other([0.07, 0.073, 0.067]),
    ]);
    expect(pool.taken).toEqual([true, true, false, true]);
  });

  it('the two judged alone, where they scatter beyond the session', () => {
    const pool = poolOf([
      judged([0, 0.03, -0.03]),
      judged([0.02, 0.05, -0.01]),
      other([0.05, 0.052, 0.049]),
      other([0.07, 0.073, 0.069]),
    ]);
    expect(pool.taken).toEqual([true, true, false, false]);
    expect(pool.standsAlone?.own).toBeCloseTo(0.03, 4);
    expect(pool.standsAlone?.session).toBeLessThan(0.003);
  });
});

describe('an earlier day of the car', () => {
  const today = [
    [0, 0.005, -0.004],
    [0.02, 0.026, 0.017],
  ];

  it('is worth eight pulls at most, however many it had', () => {
    const { known } = earlierDay(today, { deviationShare: 0.005, degrees: 1000 });
    expect(known?.degrees).toBeGreaterThan(7.9);
    expect(known?.degrees).toBeLessThan(8);
    expect(earlierDay(today, { deviationShare: 0.005, degrees: 8 }).known?.degrees).toBeCloseTo(4, 12);
  });

  it('is refused where today scatters beyond it, saying by how much', () => {
    const { known, refusedBy } = earlierDay(today, { deviationShare: 0.0012, degrees: 20 });
    expect(known).toBeNull();
    expect(refusedBy).toBeCloseTo(0.0046, 3);
  });

  it('is nothing where there was none', () => {
    expect(earlierDay(today, null)).toEqual({ known: null, refusedBy: null });
    expect(earlierDay(today, { deviationShare: 0.005, degrees: 0 }).known).toBeNull();
  });
});

describe('a pull that stands away from its fellows', () => {
  const good = [0.02, 0.024, 0.018, 0.022];

  it('is found with how far it stands', () => {
    const odd = oddPull([[0, 0.003, -0.08, -0.002], good]);
    expect(odd).toMatchObject({ group: 0, place: 2 });
    expect(odd?.distance).toBeCloseTo(-0.0803, 3);
  });

  it('is none among pulls that scatter as pulls do', () => {
    expect(oddPull([[0, 0.003, -0.006, -0.002], good])).toBeNull();
  });

  it('can’t be told in an entry of two', () => {
    expect(oddPull([[0, -0.08], good])).toBeNull();
  });

  it('needs to stand further away, the more ways it is looked at', () => {
    const groups = [[0, 0.003, -0.02, -0.002], good];
    expect(oddPull(groups, 1)).not.toBeNull();
    expect(oddPull(groups, 1000)).toBeNull();
  });
});
