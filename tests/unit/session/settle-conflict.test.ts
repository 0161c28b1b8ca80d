import { describe, expect, it } from 'vitest';
import { mergeJson, settleConflict, valueAt } from '../../../core/session/index.ts';

/** Merges, and settles every conflict for one side. */
function settled(base: unknown, mine: unknown, theirs: unknown, side: 'mine' | 'theirs'): unknown {
  const { value, conflicts } = mergeJson(base, mine, theirs);
  return conflicts
    .filter((c) => c.kind !== 'order')
    .reduce<unknown>((json, conflict) => settleConflict(json, conflict, side), value);
}

const base = {
  note: 'morning',
  limits: { heat: 60 },
  asTyped: { 'car.mass_kg': { value: 1, unit: 'kg' } },
  ledger: [
    { id: 'a', note: '', runs: [{ runId: 'r1', from_s: null }] },
    { id: 'b', note: '', runs: [] },
  ],
};

describe('what both copies changed', () => {
  it.each([
    ['a note', { note: 'mine' }, { note: 'theirs' }],
    ['a limit', { limits: { heat: 61 } }, { limits: { heat: 62 } }],
    [
      'a key that holds dots',
      { asTyped: { 'car.mass_kg': { value: 2, unit: 'kg' } } },
      { asTyped: { 'car.mass_kg': { value: 3, unit: 'kg' } } },
    ],
    [
      'a run in an entry',
      { ledger: [{ id: 'a', note: '', runs: [{ runId: 'r1', from_s: 1 }] }, base.ledger[1]] },
      { ledger: [{ id: 'a', note: '', runs: [{ runId: 'r1', from_s: 2 }] }, base.ledger[1]] },
    ],
    ['an entry removed here and changed there', { ledger: [base.ledger[0]] }, changedB()],
    ['an entry changed here and removed there', changedB(), { ledger: [base.ledger[0]] }],
  ])('%s goes either way, and back', (_, mine, theirs) => {
    const [m, t] = [
      { ...base, ...mine },
      { ...base, ...theirs },
    ];
    expect(settled(base, m, t, 'theirs')).toEqual(t);
    expect(settled(base, m, t, 'mine')).toEqual(m);
    const [conflict] = mergeJson(base, m, t).conflicts;
    if (!conflict) throw new Error('no conflict');
    const there = settleConflict(m, conflict, 'theirs');
    expect(settleConflict(there, conflict, 'mine')).toEqual(m);
    expect(valueAt(there, conflict.path)).toEqual(conflict.theirs);
  });

  it('is told as gone where the entry it stood in is no longer there', () => {
    const conflict = { path: 'ledger.gone.note', mine: 'x', theirs: 'y' };
    expect(settleConflict(base, conflict, 'theirs')).toBeNull();
    expect(valueAt(base, conflict.path)).toBeUndefined();
  });

  it('a path to the prototype is a key and no way in', () => {
    const hostile = { path: '__proto__', mine: {}, theirs: { polluted: true } };
    const out = settleConflict(base, hostile, 'theirs') as object;
    expect(Object.hasOwn(out, '__proto__')).toBe(true);
    expect(Object.getPrototypeOf(out)).toBe(Object.prototype);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(settleConflict(base, { ...hostile, path: 'constructor.prototype.x' }, 'theirs')).not.toBeNull();
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });
});

function changedB() {
  return { ledger: [base.ledger[0], { id: 'b', note: 'changed', runs: [] }] };
}
