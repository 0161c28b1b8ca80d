import { channelOf, type Log } from '../log/index.ts';
import type { Note } from '../result/index.ts';
import type { Conditions } from './conditions.ts';
import type { PullWindow } from './pull-window.ts';

/**
 * Slope of the road under a pull as rise per distance, uphill positive: as entered, else from the altitude channel
 * where that clearly shows one, else null (unknown).
 *
 * Altitude is fitted by one straight line over distance. A height that wanders for reasons of its own (satellite,
 * weather) would bring more error than a level road has, so it counts only beyond three of its standard errors;
 * these are taken wide, as if ten rows in a row erred together.
 */
export function gradeOfPull(
  log: Log,
  window: PullWindow,
  conditions: Conditions,
): { readonly grade: number | null; readonly notes: readonly Note[] } {
  if (conditions.grade_percent !== null) return { grade: conditions.grade_percent / 100, notes: [] };
  if (conditions.place === 'dyno') return { grade: 0, notes: [] };
  const altitude = channelOf(log, 'altitude');
  const speed = channelOf(log, 'gpsSpeed') ?? channelOf(log, 'vehicleSpeed');
  if (!altitude || !speed) return { grade: null, notes: [] };
  const xs: number[] = [];
  const ys: number[] = [];
  let distance = 0;
  for (let i = window.from; i < window.to; i++) {
    if (i > window.from) {
      const dt = (log.time[i] as number) - (log.time[i - 1] as number);
      const v = speed.values[i] as number;
      distance += (Number.isFinite(v) ? v : 0) * dt;
    }
    const height = altitude.values[i] as number;
    if (!Number.isFinite(height)) continue;
    xs.push(distance);
    ys.push(height);
  }
  if (xs.length < 10) return { grade: null, notes: [] };
  const line = straightLine(xs, ys);
  const error = line.error * Math.sqrt(Math.min(10, xs.length / 4));
  const grade = Math.tan(Math.asin(Math.max(-0.5, Math.min(0.5, line.slope))));
  if (Math.abs(grade) <= 3 * error)
    return { grade: null, notes: [{ code: 'power/altitude-unclear', facts: { grade, error } }] };
  return { grade, notes: [{ code: 'power/grade-from-altitude', facts: { grade } }] };
}

/** Least squares y = a + slope x with the standard error of the slope. */
export function straightLine(xs: readonly number[], ys: readonly number[]) {
  const n = xs.length;
  const mx = xs.reduce((a, b) => a + b, 0) / n;
  const my = ys.reduce((a, b) => a + b, 0) / n;
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    sxx += ((xs[i] as number) - mx) ** 2;
    sxy += ((xs[i] as number) - mx) * ((ys[i] as number) - my);
  }
  const slope = sxy / sxx;
  const intercept = my - slope * mx;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += ((ys[i] as number) - intercept - slope * (xs[i] as number)) ** 2;
  return { slope, intercept, error: Math.sqrt(squares / Math.max(1, n - 2) / sxx) };
}
