import type { Samples } from './local-polynomial.ts';
import type { SpeedSignal } from './speed-signal.ts';

/** Narrowest half width that a slope is ever seen through [s]; shorter than any gear gives an engine time to change. */
export const narrowestHalfWidth = 0.18;

/** Of three to the narrowest half width, lines and parabolas see no more than their means. */
const shortest = narrowestHalfWidth / 3;

/**
 * Samples that lie closer together than a third of the narrowest kernel as one each at even instants: their means by
 * weight, brought to the instant along the signal's own rise, their weights summed. A line through them stays what it
 * was, and so does its error; a bend shifts by its own rise within a third of the kernel. A log of 100 rows a second costs no more than one of 20, and even
 * instants less still (even-slope.ts).
 *
 * @param signals  how many signals the samples come from: each must be dense for itself
 */
function gathered(samples: Samples, signals: number): Samples {
  const { time, value, weight } = samples;
  const n = time.length;
  const first = time[0] as number;
  const span = (time[n - 1] as number) - first;
  // Sixths and one, so that every second or third instant meets both ends.
  const parts = 6 * Math.floor((span / shortest - 1) / 6) + 1;
  // Below that little is saved, and groups of one and two in turn would be uneven.
  if (n < 1.9 * signals * parts || parts < 7) return samples;
  const step = span / parts;
  const at = new Float64Array(parts);
  const mean = new Float64Array(parts);
  const weights = new Float64Array(parts);
  for (let i = 0; i < n; i++) {
    const offset = (time[i] as number) - first;
    const k = Math.min(parts - 1, Math.floor(offset / step));
    const w = weight[i] as number;
    at[k] = (at[k] as number) + w * offset;
    mean[k] = (mean[k] as number) + w * (value[i] as number);
    weights[k] = (weights[k] as number) + w;
  }
  // A gap in the samples is left to the samples themselves.
  for (let k = 0; k < parts; k++) if (!((weights[k] as number) > 0)) return samples;
  for (let k = 0; k < parts; k++) {
    at[k] = (at[k] as number) / (weights[k] as number);
    mean[k] = (mean[k] as number) / (weights[k] as number);
  }
  const shifted = mean.map((v, k) => {
    const a = Math.max(0, k - 1);
    const b = Math.min(parts - 1, k + 1);
    const slope = ((mean[b] as number) - (mean[a] as number)) / ((at[b] as number) - (at[a] as number));
    return v + slope * ((k + 0.5) * step - (at[k] as number));
  });
  return { time: at.map((_, k) => first + (k + 0.5) * step), value: shifted, weight: weights };
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
