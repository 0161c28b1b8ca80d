import type { LeadingSamples } from './smoothing/slope-estimate.ts';
import type { SpeedSignal } from './speed/speed-signal.ts';

/**
 * Samples of all signals, one signal after another, each weighed by its own noise. No signal counts for more than a
 * million times another: past that it stands alone anyway, and the sums lose their digits.
 */
export function samplesOf(signals: readonly SpeedSignal[]): LeadingSamples {
  let count = 0;
  let loudest = 1e-9;
  for (const s of signals) {
    count += s.time.length;
    loudest = Math.max(loudest, s.noise);
  }
  const time = new Float64Array(count);
  const value = new Float64Array(count);
  const weight = new Float64Array(count);
  const lead = new Float64Array(count);
  let from = 0;
  for (const s of signals) {
    time.set(s.time, from);
    value.set(s.value, from);
    if (s.lead) lead.set(s.lead, from);
    const to = from + s.time.length;
    weight.fill(1 / Math.max(s.noise, 1e-3 * loudest, 1e-9) ** 2, from, to);
    from = to;
  }
  return { time, value, weight, lead };
}
