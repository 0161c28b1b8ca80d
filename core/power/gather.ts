import type { Samples } from './local-polynomial.ts';
import type { SpeedSignal } from './speed-signal.ts';

/**
 * Samples of all signals in order of time, each weighed by its own noise. No signal counts for more than a million
 * times another: past that it stands alone anyway, and the sums lose their digits.
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
  return { time, value, weight };
}
