import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  applyEdit,
  createSession,
  EntrySchema,
  entryBefore,
  RunRecordSchema,
  type SessionEdit,
  SessionEditSchema,
  type SessionState,
} from '../../../core/session/index.ts';

const now = '2027-03-14T10:00:00.000Z';
const session = createSession({
  id: 's1',
  baselineId: 'e0',
  name: 'Fenmoor hatch',
  now,
  car: { mass_kg: 1400 },
});
const run = RunRecordSchema.parse({
  schemaVersion: 1,
  id: 'r1',
  name: 'run.csv',
  importedAt: now,
  size_bytes: 10,
  sha256: 'a'.repeat(64),
});
const start: SessionState = { session, runs: { r1: run } };
const entry = (id: string, more: object = {}) =>
  EntrySchema.parse({ id, kind: 'boost', createdAt: now, ...more });

function apply(state: SessionState, ...edits: SessionEdit[]): SessionState {
  return edits.reduce((s, e) => unwrap(applyEdit(s, e)), state);
}

describe('edits of a session', () => {
  it('a new session starts with a baseline that waits for its pulls', () => {
    expect(session.ledger).toMatchObject([{ id: 'e0', kind: 'baseline', runs: [], state: 'kept' }]);
  });

  it('an edit leaves the state before untouched, so that undo is keeping it', () => {
    const frozen = structuredClone(start);
    apply(start, { type: 'entry.add', entry: entry('e1') }, { type: 'session.rename', name: 'Other' });
    expect(start).toEqual(frozen);
  });

  it('a patch that comes over the contract changes what it names and nothing else', () => {
    expect(
      SessionEditSchema.parse({ type: 'entry.set', entryId: 'e1', patch: { state: 'dropped' } }),
    ).toEqual({ type: 'entry.set', entryId: 'e1', patch: { state: 'dropped' } });
    expect(SessionEditSchema.parse({ type: 'table.set', tableId: 't1', patch: { now: 'x' } })).toEqual({
      type: 'table.set',
      tableId: 't1',
      patch: { now: 'x' },
    });
  });

  it('an entry is judged against the last kept one before it, or the one it names', () => {
    const state = apply(
      start,
      { type: 'entry.add', entry: entry('e1') },
      { type: 'entry.add', entry: entry('e2') },
      { type: 'entry.set', entryId: 'e1', patch: { state: 'dropped' } },
    );
    expect(entryBefore(state.session, 'e2')?.id).toBe('e0');
    expect(entryBefore(state.session, 'e0')).toBeNull();
    const named = apply(state, { type: 'entry.set', entryId: 'e2', patch: { against: 'e1' } });
    expect(entryBefore(named.session, 'e2')?.id).toBe('e1');
  });

  it('moves entries but never the baseline', () => {
    const two = apply(
      start,
      { type: 'entry.add', entry: entry('e1') },
      { type: 'entry.add', entry: entry('e2') },
    );
    const moved = apply(two, { type: 'entry.move', entryId: 'e2', to: 1 });
    expect(moved.session.ledger.map((e) => e.id)).toEqual(['e0', 'e2', 'e1']);
    expect(applyEdit(two, { type: 'entry.move', entryId: 'e0', to: 1 })).toMatchObject({
      problems: [{ code: 'session/baseline-stays' }],
    });
  });

  it('what was driven stays in the book: an entry with runs is not removed', () => {
    const driven = apply(
      start,
      { type: 'entry.add', entry: entry('e1') },
      { type: 'entry.takeRun', entryId: 'e1', runId: 'r1', from_s: null, to_s: null },
    );
    expect(applyEdit(driven, { type: 'entry.remove', entryId: 'e1' })).toMatchObject({
      problems: [{ code: 'session/entry-has-runs', facts: { runs: 1 } }],
    });
    const left = apply(driven, { type: 'entry.leaveRun', entryId: 'e1', runId: 'r1' });
    expect(apply(left, { type: 'entry.remove', entryId: 'e1' }).session.ledger).toHaveLength(1);
  });

  describe('a log that came into the wrong entry', () => {
    const late = { ...run, id: 'r2', name: 'later.csv', importedAt: '2027-03-14T11:00:00.000Z' };
    const two = apply(
      { session, runs: { r1: { ...run, note: 'wind from the left' }, r2: late } },
      { type: 'entry.add', entry: entry('e1') },
      { type: 'entry.takeRun', entryId: 'e1', runId: 'r1', from_s: 4, to_s: 9 },
      { type: 'entry.takeRun', entryId: 'e0', runId: 'r2', from_s: null, to_s: null },
    );
    const runsOf = (state: SessionState, id: string) => state.session.ledger.find((e) => e.id === id)?.runs;
    const toBaseline: SessionEdit = { type: 'entry.moveRun', entryId: 'e1', runId: 'r1', to: 'e0' };

    it('moves with its window and what was said of it, in the order in which logs came in', () => {
      const moved = apply(two, toBaseline);
      expect(runsOf(moved, 'e1')).toEqual([]);
      expect(runsOf(moved, 'e0')).toMatchObject([{ runId: 'r1', from_s: 4, to_s: 9 }, { runId: 'r2' }]);
      expect(moved.runs).toBe(two.runs);
      expect(apply(moved, { ...toBaseline, entryId: 'e0', to: 'e1' }).session.ledger).toEqual(
        two.session.ledger,
      );
    });

    it('counts once where the other entry holds it already, and keeps a window apart from it', () => {
      const take = (from_s: number | null, to_s: number | null) =>
        apply(two, { type: 'entry.takeRun', entryId: 'e0', runId: 'r1', from_s, to_s }, toBaseline);
      expect(runsOf(take(null, null), 'e0')).toMatchObject([
        { runId: 'r1', from_s: null, to_s: null },
        { runId: 'r2' },
      ]);
      expect(runsOf(take(7, 20), 'e0')).toMatchObject([{ from_s: 4, to_s: 20 }, { runId: 'r2' }]);
      expect(runsOf(take(12, 20), 'e0')).toHaveLength(3);
    });

    it('stays where it is asked to stay, and is named where it does not stand', () => {
      expect(apply(two, { ...toBaseline, to: 'e1' }).session.ledger).toEqual(two.session.ledger);
      expect(applyEdit(two, { ...toBaseline, entryId: 'e0', to: 'e1' })).toMatchObject({
        problems: [{ code: 'session/run-not-in-entry', facts: { entryId: 'e0', runId: 'r1' } }],
      });
      expect(applyEdit(two, { ...toBaseline, to: 'e9' })).toMatchObject({
        problems: [{ code: 'session/no-entry', facts: { entryId: 'e9' } }],
      });
    });
  });

  it('removing an entry frees those that stood against it', () => {
    const state = apply(
      start,
      { type: 'entry.add', entry: entry('e1') },
      { type: 'entry.add', entry: entry('e2', { against: 'e1' }) },
      { type: 'entry.remove', entryId: 'e1' },
    );
    expect(state.session.ledger.at(-1)).toMatchObject({ id: 'e2', against: null });
  });

  it('a partial patch with an undefined value changes nothing', () => {
    const patch = SessionEditSchema.parse({ type: 'entry.set', entryId: 'e0', patch: { note: undefined } });
    expect(apply(start, patch).session.ledger[0]?.note).toBe('');
  });

  it('a pull edit is added, never replacing an earlier one', () => {
    const drop = { at_s: 3, action: 'drop', from_s: null, to_s: null, reason: 'wheel spin' } as const;
    const restore = { at_s: 3, action: 'restore', from_s: null, to_s: null, reason: '' } as const;
    const state = apply(
      start,
      { type: 'pull.edit', runId: 'r1', edit: drop },
      { type: 'pull.edit', runId: 'r1', edit: restore },
    );
    expect(state.runs.r1?.pullEdits).toEqual([drop, restore]);
  });

  it('names an entry or a run that is not there', () => {
    expect(applyEdit(start, { type: 'entry.leaveRun', entryId: 'e9', runId: 'r1' })).toMatchObject({
      problems: [{ code: 'session/no-entry', facts: { entryId: 'e9' } }],
    });
    expect(applyEdit(start, { type: 'run.set', runId: 'r9', patch: { note: 'x' } })).toMatchObject({
      problems: [{ code: 'session/no-run', facts: { runId: 'r9' } }],
    });
  });
});
