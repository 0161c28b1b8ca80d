/** One event of a trace of Chromium, as far as it is used. */
export type TraceEvent = {
  readonly name: string;
  readonly cat: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Start and length by the clock [us]. */
  readonly ts: number;
  readonly dur?: number;
  /** Processor time of the thread [us]. */
  readonly tdur?: number;
};

const checkpoint = 'BlinkScheduler_PerformMicrotaskCheckpoint';

/**
 * Tasks of one thread, and what is run between two of them: a library that came in is evaluated there, in a checkpoint
 * of its own that no task holds.
 */
function tasksOf(events: readonly TraceEvent[], { pid, tid }: TraceEvent): readonly TraceEvent[] {
  const own = events
    .filter((e) => e.pid === pid && e.tid === tid && e.ph === 'X')
    .filter((e) => e.name === 'ThreadControllerImpl::RunTask' || e.name === checkpoint)
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  let end = Number.NEGATIVE_INFINITY;
  return own.filter(({ ts, dur = 0 }) => {
    if (ts < end) return false;
    end = ts + dur;
    return true;
  });
}

/**
 * Processor time of the thread that set two marks [ms]: its longest task between them, and all of it within a
 * span of the clock that starts `from_ms` after the first mark. A task that lies partly in the span counts by
 * the part of its clock time that does.
 */
export function threadTimes(
  events: readonly TraceEvent[],
  span: { readonly first: string; readonly last: string; readonly from_ms: number; readonly for_ms: number },
): { readonly longest_ms: number; readonly within_ms: number } {
  const from = events.find((e) => e.name === span.first);
  const to = events.find((e) => e.name === span.last);
  if (!from || !to) return { longest_ms: Number.NaN, within_ms: Number.NaN };
  const tasks = tasksOf(events, from);
  let longest = 0;
  let within = 0;
  const start = from.ts + span.from_ms * 1000;
  const end = start + span.for_ms * 1000;
  for (const { ts, dur = 0, tdur = 0 } of tasks) {
    if (ts >= from.ts && ts < to.ts) longest = Math.max(longest, tdur);
    const shared = Math.min(ts + dur, end) - Math.max(ts, start);
    if (shared > 0 && dur > 0) within += tdur * (shared / dur);
  }
  return { longest_ms: longest / 1000, within_ms: within / 1000 };
}

/** One task of the thread that set two marks: how long after the first it began, its clock and processor time [ms]. */
export type Task = { readonly at_ms: number; readonly clock_ms: number; readonly own_ms: number };

/** Every task that began between two marks, the one that held its thread longest by the clock first. */
export function tasksBetween(events: readonly TraceEvent[], first: string, last: string): readonly Task[] {
  const from = events.find((e) => e.name === first);
  const to = events.find((e) => e.name === last);
  if (!from || !to) throw new Error(`the trace has no mark ${from ? last : first}`);
  return tasksOf(events, from)
    .filter((e) => e.ts >= from.ts && e.ts < to.ts)
    .map(({ ts, dur = 0, tdur = 0 }) => ({
      at_ms: (ts - from.ts) / 1000,
      clock_ms: dur / 1000,
      own_ms: tdur / 1000,
    }))
    .sort((a, b) => b.clock_ms - a.clock_ms);
}
