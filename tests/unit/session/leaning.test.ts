import { describe, expect, it } from 'vitest';
import { judgeSession } from '../../../core/compare/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { applyEdit, createSession, priorOf, type SessionState } from '../../../core/session/index.ts';
import { inventDay, quietDay } from '../../support/invented-session.ts';

const session = createSession({
  id: 'today',
  baselineId: 'e0',
  name: 'Today',
  now: '2027-03-14T10:00:00.000Z',
  car: { name: 'Invented', mass_kg: 1400 },
});
const state: SessionState = { session, runs: {} };
const earlier = { sessionId: 'before', name: 'Last week', deviation_percent: 0.5, degrees: 20 };

describe('leaning on an earlier session', () => {
  it('is kept in the session, and taken off again', () => {
    const set = applyEdit(state, { type: 'leaning.set', leansOn: earlier });
    expect(set.ok && set.value.session.leansOn).toEqual(earlier);
    expect(set.ok && priorOf(set.value.session)).toEqual({ deviationShare: 0.005, degrees: 20 });
    const off = applyEdit(unwrap(set), { type: 'leaning.set', leansOn: null });
    expect(unwrap(off).session.leansOn).toBeNull();
  });

  it('is refused on the session itself or a copy of it', () => {
    const set = applyEdit(state, { type: 'leaning.set', leansOn: { ...earlier, sessionId: 'today' } });
    expect(set.ok || set.problems[0].code).toBe('session/leans-on-itself');
  });

  it('gives a session of single pulls an interval, and counts for no more than eight spare pulls', () => {
    const day = inventDay({
      ...quietDay,
      entries: [
        { pulls: 1, share: 0 },
        { pulls: 1, share: 0.02 },
      ],
    });
    const entries = day.map((e, i) => ({
      ...e,
      against: i === 0 ? null : 'e0',
      declared: null,
      isKept: true,
    }));
    const alone = judgeSession(entries);
    const leaning = judgeSession(entries, { prior: { deviationShare: 0.005, degrees: 1000 } });
    expect(alone.lines[1]?.verdict?.interval95).toBeNull();
    const { interval95, repeatability, remarks } = leaning.lines[1]?.verdict ?? {};
    expect(interval95).not.toBeNull();
    expect(repeatability?.degrees).toBeLessThanOrEqual(8);
    expect(remarks?.map((r) => r.code)).toContain('compare/prior-used');
  });

  it('is not handed on: what a later session may lean on is what this one’s own pulls told', () => {
    const entries = inventDay(quietDay).map((e, i) => ({
      ...e,
      against: i === 0 ? null : 'e0',
      declared: null,
      isKept: true,
    }));
    const prior = { deviationShare: 0.005, degrees: 20 };
    expect(judgeSession(entries, { prior }).repeatability).toEqual(judgeSession(entries).repeatability);
  });
});
