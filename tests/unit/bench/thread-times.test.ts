import { expect, it } from 'vitest';
import { type TraceEvent, tasksBetween, threadTimes } from '../../bench/screen-speed/thread-times.ts';

const event = (name: string, ts: number, dur: number, tid = 1): TraceEvent => ({
  name,
  cat: 'toplevel',
  ph: 'X',
  pid: 7,
  tid,
  ts,
  dur,
  tdur: dur / 2,
});
const task = 'ThreadControllerImpl::RunTask';
const between = 'BlinkScheduler_PerformMicrotaskCheckpoint';

it('what a page runs between two tasks counts as a task, and what a task holds is not counted twice', () => {
  const events = [
    event('first', 0, 0),
    event(task, 1_000, 10_000),
    event(between, 9_000, 1_000),
    event(between, 12_000, 900_000),
    event(task, 913_000, 5_000),
    event(task, 20_000, 800_000, 2),
    event('last', 950_000, 0),
  ];
  expect(tasksBetween(events, 'first', 'last').map((t) => t.clock_ms)).toEqual([900, 10, 5]);
  const span = { first: 'first', last: 'last', from_ms: 0, for_ms: 1000 };
  expect(threadTimes(events, span)).toEqual({ longest_ms: 450, within_ms: 457.5 });
});
