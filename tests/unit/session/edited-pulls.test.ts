import { describe, expect, it } from 'vitest';
import { countedOnAt, findPulls, type Log, type Pull, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { editPulls, PullEditSchema } from '../../../core/session/index.ts';

const samples = 101;
const time = Float64Array.from({ length: samples }, (_, i) => i * 0.1);
const speed = Float64Array.from({ length: samples }, (_, i) => ((2000 + 40 * i) * Math.PI) / 30);
const log: Log = {
  file: 'a.csv',
  time,
  channels: [
    {
      column: 'rpm',
      quantity: 'engineSpeed',
      unit: 'rpm',
      confidence: 1,
      reason: null,
      values: speed,
      flags: new Uint8Array(samples),
    },
  ],
  segments: [{ from: 0, to: samples }],
  warnings: [],
  style: {
    encoding: 'utf-8',
    delimiter: ',',
    decimal: '.',
    headerLine: 1,
    firstDataLine: 2,
    timeFormat: 's',
  },
};
const pull = (start: number, end: number, complete = true): Pull => ({
  from: start * 10,
  to: end * 10 + 1,
  start_s: start,
  end_s: end,
  gear: 3,
  rpmFrom: 2000 + 400 * start,
  rpmTo: 2000 + 400 * end,
  complete,
  flags: [],
});
const found = [pull(1, 4), pull(5, 6, false)];
const edit = (facts: object) => PullEditSchema.parse(facts);

describe('two recordings in one file, each with its clock from zero', () => {
  const rowsOf = Array.from({ length: 400 }, (_, i) => {
    const isPull = i >= 100 && i < 300;
    return [(i / 20).toFixed(2), isPull ? 2500 + 20 * (i - 100) : 2500, isPull ? 100 : 15].join(',');
  });
  const text = ['Time (s),RPM,Pedal (%)', ...rowsOf, ...rowsOf].join('\n');
  const twice = unwrap(readLog(new TextEncoder().encode(text), { file: 'twice.csv' }));
  const { pulls } = findPulls(twice);
  const middle = (p: Pull | undefined) => ((p?.start_s ?? 0) + (p?.end_s ?? 0)) / 2;

  it('have a pull each, told apart though both begin at 5 s of their clock', () => {
    const edited = editPulls(twice, 'r', pulls, []);
    expect(edited.map((p) => p.pull.from)).toEqual([100, 500]);
    expect(new Set(edited.map((p) => p.id)).size).toBe(2);
    expect(pulls.map((p) => p.start_s - countedOnAt(twice, p.from))).toEqual([5, 5]);
  });

  it('lose the second alone where the second is left out', () => {
    const edits = [edit({ at_s: middle(pulls[1]), action: 'drop', from_s: null, to_s: null, reason: 'wet' })];
    expect(editPulls(twice, 'r', pulls, edits).map((p) => p.droppedBecause)).toEqual([null, 'wet']);
  });

  it('part a pull that is trimmed beyond the start of its recording', () => {
    const edits = [edit({ at_s: middle(pulls[1]), action: 'trim', from_s: 1, to_s: middle(pulls[1]) })];
    expect(editPulls(twice, 'r', pulls, edits)[1]?.pull.from).toBe(400);
  });
});

describe('pulls after edits by hand', () => {
  it('count when complete and not dropped', () => {
    expect(editPulls(log, 'r', found, []).map((p) => p.counts)).toEqual([true, false]);
  });

  it('a pull trimmed past its neighbour ends where that begins', () => {
    const [first, second] = editPulls(log, 'r', found, [
      edit({ at_s: 2, action: 'trim', from_s: 0, to_s: 5.5 }),
    ]);
    expect(first?.pull).toMatchObject({ from: 0, to: 50 });
    expect(second?.pull).toMatchObject({ from: 50, to: 61 });
    const [before, after] = editPulls(log, 'r', found, [
      edit({ at_s: 5.5, action: 'trim', from_s: 2, to_s: 20 }),
    ]);
    expect(before?.pull).toMatchObject({ from: 10, to: 41 });
    expect(after?.pull).toMatchObject({ from: 41, to: 101 });
  });

  it('a dropped pull stays, with its reason, and comes back when restored', () => {
    const drop = edit({ at_s: 2, action: 'drop', reason: 'clutch slipped' });
    expect(editPulls(log, 'r', found, [drop])[0]).toMatchObject({
      counts: false,
      droppedBecause: 'clutch slipped',
    });
    const restored = editPulls(log, 'r', found, [drop, edit({ at_s: 2, action: 'restore' })]);
    expect(restored[0]).toMatchObject({ counts: true, droppedBecause: null });
    expect(restored[0]?.decisions).toEqual([
      { action: 'drop', reason: 'clutch slipped' },
      { action: 'restore', reason: '' },
    ]);
    const again = editPulls(log, 'r', found, [
      drop,
      edit({ at_s: 2, action: 'restore', reason: 'it did not' }),
      edit({ at_s: 2, action: 'drop', reason: 'it did' }),
    ])[0];
    expect(again).toMatchObject({ counts: false, droppedBecause: 'it did' });
    expect(again?.decisions.map((d) => d.reason)).toEqual(['clutch slipped', 'it did not', 'it did']);
  });

  it('a trimmed pull keeps the reason, and one that was not trimmed has none', () => {
    const trim = edit({ at_s: 2, action: 'trim', from_s: 1.5, to_s: 3, reason: 'bump' });
    const [first, second] = editPulls(log, 'r', found, [trim]);
    expect(first).toMatchObject({ isTrimmed: true, trimmedBecause: 'bump' });
    expect(first?.pull.start_s).toBeCloseTo(1.5, 1);
    expect(second?.trimmedBecause).toBeNull();
  });

  it('an aborted pull counts once a person says so', () => {
    expect(editPulls(log, 'r', found, [edit({ at_s: 5.5, action: 'restore' })])[1]?.counts).toBe(true);
  });

  it('a trim moves the ends to whole samples and keeps gear and name of the run', () => {
    const trimmed = editPulls(log, 'r', found, [
      edit({ at_s: 2, action: 'trim', from_s: 1.52, to_s: 3.5 }),
    ])[0];
    expect(trimmed?.pull).toMatchObject({ from: 16, to: 36, gear: 3 });
    expect(trimmed?.pull.start_s).toBeCloseTo(1.6, 9);
    expect(trimmed?.pull.rpmTo).toBeCloseTo(3400, 6);
    expect(trimmed?.id).toBe('r:1.60');
  });

  describe('that were trimmed', () => {
    const spin = { code: 'log/pull-wheel-spin', facts: { time_s: 1.2, excess: 0.1 } } as const;
    const limiter = { code: 'log/pull-limiter', facts: { engineSpeed_rad_s: 700 } } as const;
    const change = { code: 'log/pull-gear-change', facts: { time_s: 4 } } as const;
    const flagged = [{ ...pull(1, 4), flags: [spin, limiter, change] }];
    const trim = (from_s: number, to_s: number) => edit({ at_s: 2, action: 'trim', from_s, to_s });
    const flagsAfter = (of: Log, edits: ReturnType<typeof edit>[], from: readonly Pull[] = flagged) =>
      editPulls(of, 'r', from, edits)[0]?.pull.flags;

    it('lose the flags whose moment was cut off, and keep those without one', () => {
      expect(flagsAfter(log, [trim(2, 4)])).toEqual([limiter, change]);
      expect(flagsAfter(log, [trim(1, 3)])).toEqual([spin, limiter]);
      expect(flagsAfter(log, [trim(1, 4)])).toEqual([spin, limiter, change]);
    });

    it('have them again once the ends are moved back', () => {
      expect(flagsAfter(log, [trim(2, 3), trim(1, 4)])).toEqual([spin, limiter, change]);
    });

    it('lose what was doubtful about an end that was moved', () => {
      const start = { code: 'log/pull-start-uncertain', facts: { within_s: 0.2 } } as const;
      const end = { code: 'log/pull-end-uncertain', facts: { within_s: 0.3 } } as const;
      const from = [{ ...pull(1, 4), flags: [start, end] }];
      expect(flagsAfter(log, [trim(1.5, 4)], from)).toEqual([end]);
      expect(flagsAfter(log, [trim(1, 3.5)], from)).toEqual([start]);
      expect(flagsAfter(log, [trim(1, 4)], from)).toEqual([start, end]);
    });

    it('hold a moment to the clock of the file, which started anew', () => {
      const later = { ...log, segments: [{ from: 0, to: samples, countedOn_s: 1 }] };
      expect(flagsAfter(later, [trim(2, 4)])).toEqual([spin, limiter]);
    });

    it('keep the knock that is left within, at its own moment', () => {
      const values = new Float64Array(samples);
      values[12] = 0.08;
      values[30] = 0.05;
      const knocking = {
        ...log,
        channels: [...log.channels, { ...log.channels[0], quantity: 'knockRetard', values }],
      } as Log;
      const knock = { code: 'log/pull-knock', facts: { time_s: 1.2, retard_rad: 0.08 } } as const;
      const from = [{ ...pull(1, 4), flags: [knock] }];
      expect(flagsAfter(knocking, [trim(2, 4)], from)).toEqual([
        { code: 'log/pull-knock', facts: { time_s: time[30], retard_rad: 0.05 } },
      ]);
      expect(flagsAfter(knocking, [trim(1.5, 2.5)], from)).toEqual([]);
      // Ends that were moved outwards take in what lies there.
      expect(flagsAfter(knocking, [trim(1, 4)], [{ ...pull(2, 3), flags: [] }])).toMatchObject([
        { facts: { retard_rad: 0.08 } },
      ]);
    });
  });

  it('an edit at a moment that meets no pull changes nothing', () => {
    const before = editPulls(log, 'r', found, []);
    expect(editPulls(log, 'r', found, [edit({ at_s: 9, action: 'drop', reason: 'x' })])).toEqual(before);
  });

  it('a pull added by hand joins in order of time', () => {
    const added = editPulls(log, 'r', found, [edit({ at_s: 4.2, action: 'add', from_s: 4.2, to_s: 4.8 })]);
    expect(added.map((p) => p.pull.start_s.toFixed(1))).toEqual(['1.0', '4.2', '5.0']);
    expect(added[1]?.counts).toBe(true);
  });
});
