import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differingFields, mergeJson, sameJson } from '../../../core/session/index.ts';

const line = (id: string, note = '') => ({ id, note });
const kinds = (merged: ReturnType<typeof mergeJson>) => merged.conflicts.map((c) => [c.path, c.kind]);

describe('what differs', () => {
  it.each([
    [{ a: 1, b: 2 }, { b: 2, a: 1 }, []],
    [{ a: { b: [1, 2] } }, { a: { b: [1, 3] } }, ['a.b.1']],
    [{ a: 1 }, { a: 1, c: null }, ['c']],
    [[1], [1, 2], ['1']],
    [1, '1', ['']],
    [{ a: [] }, { a: {} }, ['a']],
    [null, null, []],
  ])('%j and %j: %j', (a, b, fields) => expect(differingFields(a, b)).toEqual(fields));
});

describe('two changed copies', () => {
  it('what one side changed is taken, also in things with an id and in keys nobody knows', () => {
    const base = { note: '', limits: { boost: 1, heat: 60 }, ledger: [line('a'), line('b')], lane: 3 };
    const mine = { ...base, note: 'windy', ledger: [line('a', 'mine'), line('b')] };
    const theirs = {
      ...base,
      limits: { boost: 2, heat: 60 },
      ledger: [line('a'), line('b', 'theirs')],
      lane: 4,
    };
    expect(mergeJson(base, mine, theirs)).toEqual({
      value: {
        note: 'windy',
        limits: { boost: 2, heat: 60 },
        ledger: [line('a', 'mine'), line('b', 'theirs')],
        lane: 4,
      },
      conflicts: [],
    });
  });

  it('what both changed differently is a conflict with all three values, and mine stands', () => {
    const merged = mergeJson({ n: 1 }, { n: 2 }, { n: 3 });
    expect(merged.value).toEqual({ n: 2 });
    expect(merged.conflicts).toEqual([{ path: 'n', kind: 'value', base: 1, mine: 2, theirs: 3 }]);
  });

  it('entries added on both sides are both there, mine first, and that is told', () => {
    const merged = mergeJson(
      [line('a'), line('z')],
      [line('a'), line('m'), line('z')],
      [line('a'), line('t'), line('z'), line('u')],
    );
    expect((merged.value as { id: string }[]).map((l) => l.id)).toEqual(['a', 'm', 't', 'z', 'u']);
    expect(kinds(merged)).toEqual([['', 'order']]);
  });

  it('removed on one side goes; removed here and changed there stays and is told', () => {
    const base = [line('a'), line('b'), line('c')];
    const merged = mergeJson(base, [line('a')], [line('a'), line('b'), line('c', 'new')]);
    expect(merged.value).toEqual([line('a'), line('c', 'new')]);
    expect(kinds(merged)).toEqual([['c', 'removed']]);
  });

  it('an entry moved on one side is moved', () => {
    const ids = (value: unknown) => (value as { id: string }[]).map((l) => l.id);
    const base = [line('a'), line('b'), line('c')];
    const moved = [line('a'), line('c'), line('b')];
    expect(ids(mergeJson(base, base, moved).value)).toEqual(['a', 'c', 'b']);
    expect(ids(mergeJson(base, [...base, line('m')], moved).value)).toEqual(['a', 'c', 'b', 'm']);
    expect(ids(mergeJson(base, moved, [...base, line('t')]).value)).toEqual(['a', 'c', 'b', 't']);
  });

  it('lists that only grew get both additions', () => {
    const merged = mergeJson([{ at: 1 }], [{ at: 1 }, { at: 2 }], [{ at: 1 }, { at: 3 }, { at: 2 }]);
    expect(merged.value).toEqual([{ at: 1 }, { at: 2 }, { at: 3 }]);
  });

  it('without a common version nothing counts as removed', () => {
    const merged = mergeJson(undefined, { a: 1, l: [line('x')] }, { b: 2, l: [line('y')] });
    expect(merged.value).toEqual({ a: 1, b: 2, l: [line('x'), line('y')] });
  });

  const json = fc.jsonValue({ maxDepth: 3 });
  it('one copy that did not change leaves the other as it is, with no conflict', () => {
    fc.assert(
      fc.property(json, json, (base, changed) => {
        expect(mergeJson(base, changed, base)).toEqual({ value: changed, conflicts: [] });
        expect(mergeJson(base, base, changed)).toEqual({ value: changed, conflicts: [] });
      }),
      { seed: 5 },
    );
  });

  it('each of theirs that does not stand is in a conflict', () => {
    const entry = fc.record({ id: fc.constantFrom('a', 'b', 'c', 'd'), n: fc.integer({ min: 0, max: 3 }) });
    const ledger = fc.uniqueArray(entry, { selector: (e) => e.id });
    fc.assert(
      fc.property(ledger, ledger, ledger, (base, mine, theirs) => {
        const { value, conflicts } = mergeJson(base, mine, theirs);
        const found = new Map((value as { id: string; n: number }[]).map((e) => [e.id, e.n]));
        for (const [side, other] of [
          [mine, theirs],
          [theirs, mine],
        ] as const) {
          for (const { id, n } of side) {
            const old = base.find((e) => e.id === id);
            const isUntouched = old?.n === n;
            const isChosenAway = isUntouched && other.find((e) => e.id === id)?.n !== n;
            const isTold = conflicts.some((c) => c.path === id || c.path === `${id}.n`);
            expect(found.get(id) === n || isChosenAway || isTold).toBe(true);
          }
        }
        expect(sameJson(mergeJson(base, mine, mine).value, mine)).toBe(true);
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});
