import type { Samples } from './local-polynomial.ts';
import type { SpeedSignal } from './speed-signal.ts';

/** Narrowest half width that a slope is ever seen through [s]; shorter than any gear gives an engine time to change. */
export const narrowestHalfWidth = 0.18;

/** Of three to the narrowest half width, lines and parabolas see no more than their means. */
const shortest = narrowestHalfWidth / 3;

/**
 * Samples that lie closer together than a third of the narrowest kernel as one: their means of time and value by
 * weight, their weights summed. A line through them stays exactly what it was, and so does its error; a bend shifts
 * by its own rise within a third of the kernel. A log of 100 rows a second costs no more than one of 20.
 *
 * @param signals  how many signals the samples come from: each must be dense for itself
 */
function gathered(samples: Samples, signals: number): Samples {
  const { time, value, weight } = samples;
  const n = time.length;
  const first = time[0] as number;
  const span = (time[n - 1] as number) - first;
  // As many even parts as fit, so that even rows give even groups.
  const parts = Math.max(1, Math.floor(span / shortest));
  // Below that little is saved, and groups of one and two in turn would be uneven.
  if (n < 1.9 * signals * parts) return samples;
  const width = span / parts;
  const t = new Float64Array(n);
  const v = new Float64Array(n);
  const w = new Float64Array(n);
  let count = -1;
  let group = -1;
  for (let i = 0; i < n; i++) {
    const at = Math.min(parts - 1, Math.floor(((time[i] as number) - first) / width));
    if (at !== group) {
      count++;
      group = at;
    }
    const weightOf = weight[i] as number;
    t[count] = (t[count] as number) + weightOf * ((time[i] as number) - first);
    v[count] = (v[count] as number) + weightOf * (value[i] as number);
    w[count] = (w[count] as number) + weightOf;
  }
  count++;
  for (let k = 0; k < count; k++) {
    t[k] = first + (t[k] as number) / (w[k] as number);
    v[k] = (v[k] as number) / (w[k] as number);
  }
  return { time: t.slice(0, count), value: v.slice(0, count), weight: w.slice(0, count) };
}

/**
 * Samples of all signals in order of time, each weighed by its own noise. No signal counts for more than a million
 * times another: past that it stands alone anyway, and the sums lose their digits. Dense ones are gathered.
 */
export function samplesOf(signals: readonly SpeedSignal[]): Samples {
  const loudest = Math.max(...signals.map((s) => s.noise));
  const count = signals.reduce((sum, s) => sum + s.time.length, 0);
  const time = new Float64Array(count);
  const value = new Float64Array(count);
  const weight = new Float64Array(count);
  const weights = signals.map((s) => 1 / Math.max(s.noise, 1e-3 * loudest, 1e-9) ** 2);
  const next = signals.map(() => 0);
  for (let i = 0; i < count; i++) {
    let first = -1;
    let earliest = Number.POSITIVE_INFINITY;
    for (let k = 0; k < signals.length; k++) {
      const t = signals[k]?.time[next[k] as number];
      if (t !== undefined && t < earliest) {
        earliest = t;
        first = k;
      }
    }
    time[i] = earliest;
    value[i] = signals[first]?.value[next[first] as number] as number;
    weight[i] = weights[first] as number;
    next[first] = (next[first] as number) + 1;
  }
  return gathered({ time, value, weight }, signals.length);
}
