import { describe, expect, it } from 'vitest';
import type { RunSummary } from '../../../core/contract/index.ts';
import { aligned, readAt } from '../../../renderer/channels/aligned.ts';
import {
  choicesOf,
  chosenOf,
  columnIn,
  mostOffered,
  offeredOf,
} from '../../../renderer/channels/channel-choice.ts';
import type { Trace } from '../../../renderer/channels/use-traces.ts';

const trace = (key: string, pullId: string, time: number[], values: number[]): Trace => ({
  key,
  pullId,
  side: 'after',
  time: Float64Array.from(time),
  values: Float64Array.from(values),
});

describe('aligned', () => {
  const speed = trace('engineSpeed', 'a', [0, 1, 2], [300, 400, 600]);

  it('reads the engine speed at each sample of a slower channel', () => {
    const lambda = trace('lambda', 'a', [0.5, 1.5], [0.9, 0.8]);
    const [found] = aligned([lambda, speed], 'engineSpeed');
    expect([...(found?.x ?? [])]).toEqual([350, 500]);
  });

  it('leaves out over engine speed what has none, and keeps it over time', () => {
    const lonely = trace('lambda', 'b', [0, 1], [0.9, 0.8]);
    expect(aligned([lonely, speed], 'engineSpeed').map((t) => t.pullId)).toEqual(['a']);
    expect([...(aligned([lonely], 'time')[0]?.x ?? [])]).toEqual([0, 1]);
  });
});

describe('readAt', () => {
  it('means the nearest samples of each pull and passes over gaps and what is out of reach', () => {
    const a = aligned([trace('l', 'a', [0, 1, 2], [10, Number.NaN, 30])], 'time');
    const b = aligned([trace('l', 'b', [0, 1.8], [0, 20])], 'time');
    expect(readAt([...a, ...b], 1.9, 0.5)).toBe(25);
    expect(readAt(a, 1, 0.5)).toBeNull();
  });
});

describe('choicesOf', () => {
  const column = (name: string, quantity: string | null, confidence = 0.9) => ({
    column: name,
    quantity,
    unit: '',
    confidence,
    reason: null,
  });
  const run = (columns: object[]) => ({ columns }) as unknown as RunSummary;
  const runs = [
    run([column('t', 'time'), column('X 7', null), column('MAP', 'manifoldPressure')]),
    run([column('Manifold', 'manifoldPressure', 0.5), column('Manifold 2', 'manifoldPressure', 0.8)]),
  ];

  it('names each quantity once whatever its column is called, unknown columns last', () => {
    expect(choicesOf(runs, []).map((c) => c.key)).toEqual([
      'manifoldPressure',
      'column X 7',
      'column Manifold',
    ]);
    expect(chosenOf(choicesOf(runs, []), null)).toEqual([
      'manifoldPressure',
      'column X 7',
      'column Manifold',
    ]);
  });

  it('keeps every further column of a quantity by its own name, in the units of that quantity', () => {
    const cylinders = run([
      column('EGT 1', 'exhaustTemperature'),
      column('EGT 2', 'exhaustTemperature'),
      column('EGT 3', 'exhaustTemperature', 0.5),
    ]);
    const choices = choicesOf([cylinders], []);
    expect(choices.map((c) => [c.key, c.kind])).toEqual([
      ['exhaustTemperature', 'temperature'],
      ['column EGT 2', 'temperature'],
      ['column EGT 3', 'temperature'],
    ]);
    expect(choices.map((c) => columnIn(cylinders, c))).toEqual(['EGT 1', 'EGT 2', 'EGT 3']);
    // Where the same header is not known, its values stand as they were written: another channel.
    expect(choices.map((c) => columnIn(run([column('EGT 2', null)]), c))).toEqual([null, null, null]);
  });

  it('measures a channel by formula in what it was said to be measured in', () => {
    const [found] = choicesOf(
      [run([column('Boost short', null)])],
      [{ name: 'Boost short', kind: 'pressure' }],
    );
    expect(found).toMatchObject({ quantity: null, kind: 'pressure' });
  });

  it('keeps what was chosen, as far as the logs have it', () => {
    const choices = choicesOf(runs, []);
    expect(chosenOf(choices, ['column X 7', 'lambda'])).toEqual(['column X 7']);
    expect(chosenOf(choices, ['lambda'])).toEqual(chosenOf(choices, null));
  });

  it('takes the surest column of a run', () => {
    const choice = { quantity: 'manifoldPressure', column: 'MAP', of: 'manifoldPressure' } as const;
    expect(runs.map((r) => columnIn(r, choice))).toEqual(['MAP', 'Manifold 2']);
  });
});

describe('channels to choose from', () => {
  const many = Array.from({ length: 300 }, (_, i) => ({
    key: `column Sensor ${i}`,
    quantity: null,
    column: `Sensor ${i}`,
    of: null,
    kind: null,
  }));
  const nameOf = (choice: { readonly column: string }) => choice.column;

  it('are all of them in a usual log', () => {
    expect(offeredOf(many.slice(0, 20), [], 'zzz', nameOf)).toEqual({ offered: many.slice(0, 20), left: 0 });
  });

  it('are the first of many, those chosen among them, and how many others there are', () => {
    const { offered, left } = offeredOf(many, ['column Sensor 299'], '', nameOf);
    expect(offered).toHaveLength(mostOffered + 1);
    expect(offered.at(-1)?.column).toBe('Sensor 299');
    expect(left).toBe(300 - 1 - mostOffered);
  });

  it('are found by a part of the name, in any case', () => {
    const { offered, left } = offeredOf(many, ['column Sensor 5'], ' sensor 12', nameOf);
    expect(offered.map((c) => c.column)).toEqual([
      'Sensor 5',
      'Sensor 12',
      ...Array.from({ length: 10 }, (_, i) => `Sensor 12${i}`),
    ]);
    expect(left).toBe(0);
  });
});
