import { describe, expect, it } from 'vitest';
import { declareChange, judgeSession, type SessionEntry } from '../../../core/compare/index.ts';
import { type Day, inventDay, quietDay, trueMean } from '../../support/invented-session.ts';

const degree = Math.PI / 180;

/** Baseline, boost, spark, mixture, and where asked the baseline once more. */
function session(day: Partial<Day> = {}, driveAgain = false): SessionEntry[] {
  const boost = 15_000;
  const made = inventDay({
    ...quietDay,
    ...day,
    entries: [
      { pulls: 4, share: 0 },
      { pulls: 4, share: 0.08, moved: { boost } },
      { pulls: 4, share: 0.11, moved: { boost, spark: degree } },
      { pulls: 4, share: 0.11, moved: { boost, spark: degree, lambda: -0.02 } },
      ...(driveAgain ? [{ pulls: 4, share: 0, repeats: 0 }] : []),
    ],
  });
  const declared = [
    null,
    declareChange('boost', { from: 100_000, to: 115_000 }),
    declareChange('spark', { size: degree }),
    declareChange('mixture', { from: 0.84, to: 0.82 }),
    declareChange('nothing'),
  ];
  return made.map((entry, i) => ({
    ...entry,
    against: i === 0 ? null : i === 4 ? 'e0' : `e${i - 1}`,
    declared: declared[i] ?? null,
    isKept: true,
  }));
}

describe('the session’s table', () => {
  it('judges every entry against the one it stands on', () => {
    const table = judgeSession(session({ repeatability: 0.003 }));
    expect(table.lines.map((l) => l.verdict?.kind ?? null)).toEqual([null, 'gain', 'gain', 'equivalent']);
    expect(table.lines.every((l) => l.pulls === 4)).toBe(true);
    expect(table.lines.slice(1, 3).every((l) => l.standsAdjusted)).toBe(true);
  });

  it('adds the parts up to the whole, near the truth', () => {
    const ladder = judgeSession(session()).ladder;
    expect(ladder?.parts.map((p) => p.kind)).toEqual(['boost', 'spark', 'mixture']);
    const sum = ladder?.parts.reduce((total, p) => total + p.effect, 0);
    expect(sum).toBeCloseTo(ladder?.effect ?? 0, 6);
    const truth = 0.11 * trueMean(ladder?.band_rad_s ?? [0, 0]);
    expect(ladder?.interval95[0]).toBeLessThan(truth);
    expect(ladder?.interval95[1]).toBeGreaterThan(truth);
  });

  it('leaves a dropped entry out of the ladder and keeps its line', () => {
    const entries = session().map((e, i) => (i === 3 ? { ...e, isKept: false } : e));
    const table = judgeSession(entries);
    expect(table.ladder?.toId).toBe('e2');
    expect(table.lines[3]?.verdict).not.toBeNull();
  });

  it('finds a drifting day once the baseline is driven again, and corrects for it', () => {
    const drifting = { driftPerPull: -0.002, repeatability: 0.003 };
    const table = judgeSession(session(drifting, true));
    expect(table.drift?.interval95[0]).toBeLessThan(-0.002);
    expect(table.drift?.interval95[1]).toBeGreaterThan(-0.002);
    expect(table.drift?.perPull).toBeLessThan(-0.001);
    const truth = (0.03 / 1.08) * 100;
    const spark = (table.lines[2]?.verdict?.effectShare ?? 0) * 100;
    expect(Math.abs(spark - truth)).toBeLessThan(0.5);
    expect(table.notes).toEqual([]);
  });

  it('advises to drive an earlier entry again where none was', () => {
    const table = judgeSession(session());
    expect(table.drift).toBeNull();
    expect(table.notes.map((n) => n.code)).toEqual(['compare/drive-again']);
  });

  it('holds an entry without pulls as a line without a verdict', () => {
    const table = judgeSession([
      ...session(),
      { ...(session()[3] as SessionEntry), id: 'e9', pulls: [], against: 'e3' },
    ]);
    expect(table.lines[4]).toMatchObject({ entryId: 'e9', pulls: 0, level: null, verdict: null });
  });
});
