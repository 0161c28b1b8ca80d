import { EvenFits, type EvenSamples, evenCurve, evenRisks } from './even-slope.ts';
import type { SlopeEstimator } from './slope-estimate.ts';
import { type Effort, efforts, halfWidths, sharesOf } from './smoother-choice.ts';

/** A pull is worked out at so many samples at least. */
const fewestPoints = 40;

/**
 * slopeEstimator for even samples: worked out at every one of them or every second or third, as the narrowest kernel
 * asks for, and read between by cubics: what is between strays by less than its noise.
 *
 * @param time  of the samples
 */
export function evenEstimator(samples: EvenSamples, time: Float64Array, effort: Effort): SlopeEstimator {
  const fits = new EvenFits(samples);
  const widths = halfWidths(time, effort);
  const smoothers = sharesOf(widths, evenRisks(fits, widths, efforts[effort].lattice));
  const narrowest = smoothers[0]?.halfWidth as number;
  const { first } = samples;
  const stride = strideOf(time.length - 1, narrowest / samples.step);
  const curve = evenCurve(fits, smoothers, stride);
  const step = stride * samples.step;
  const read = (ys: Float64Array, times: Float64Array) => cubicsThrough(ys, first, step, times);
  const along = (times: Float64Array) => ({
    value: hermite(curve.value, curve.slope, first, step, times),
    slope: read(curve.slope, times),
  });
  return {
    along,
    withErrors: (times) => ({
      ...along(times),
      valueVariance: straight(curve.valueVariance, first, step, times),
      slopeVariance: straight(curve.slopeVariance, first, step, times),
      covariance: straight(curve.covariance, first, step, times),
    }),
    narrowest,
    fullWidth: curve.fullWidth,
  };
}

/** The widest stride that meets both ends, stays within a third of the narrowest half width and leaves points enough. */
function strideOf(steps: number, narrowest: number): number {
  for (const stride of [3, 2])
    if (steps % stride === 0 && stride <= narrowest / 3 && steps / stride >= fewestPoints) return stride;
  return 1;
}

/** Place of an instant among even samples: the one before it, and how far beyond in steps. */
function placeOf(t: number, first: number, step: number, last: number): number {
  return Math.max(0, Math.min(last, Math.floor((t - first) / step)));
}

/** By cubics through value and slope; past an end its own line goes on. */
function hermite(
  value: Float64Array,
  slope: Float64Array,
  first: number,
  step: number,
  times: Float64Array,
): Float64Array {
  const out = new Float64Array(times.length);
  for (let k = 0; k < times.length; k++) {
    const t = times[k] as number;
    const i = placeOf(t, first, step, value.length - 2);
    const u = (t - first) / step - i;
    const a = value[i] as number;
    const b = value[i + 1] as number;
    const da = step * (slope[i] as number);
    const db = step * (slope[i + 1] as number);
    if (u < 0) out[k] = a + u * da;
    else if (u > 1) out[k] = b + (u - 1) * db;
    else {
      const u2 = u * u;
      const u3 = u2 * u;
      out[k] = a * (2 * u3 - 3 * u2 + 1) + da * (u3 - 2 * u2 + u) + b * (3 * u2 - 2 * u3) + db * (u3 - u2);
    }
  }
  return out;
}

/** By cubics through the four samples around; past an end straight on through the last two. */
function cubicsThrough(y: Float64Array, first: number, step: number, times: Float64Array): Float64Array {
  const out = new Float64Array(times.length);
  const last = y.length - 1;
  for (let k = 0; k < times.length; k++) {
    const x = ((times[k] as number) - first) / step;
    if (x < 0) out[k] = (y[0] as number) + x * ((y[1] as number) - (y[0] as number));
    else if (x > last)
      out[k] = (y[last] as number) + (x - last) * ((y[last] as number) - (y[last - 1] as number));
    else {
      const i = Math.max(1, Math.min(last - 2, Math.floor(x)));
      const u = x - i;
      const a = y[i - 1] as number;
      const b = y[i] as number;
      const c = y[i + 1] as number;
      const d = y[i + 2] as number;
      out[k] =
        (-a * u * (u - 1) * (u - 2)) / 6 +
        (b * (u + 1) * (u - 1) * (u - 2)) / 2 -
        (c * (u + 1) * u * (u - 2)) / 2 +
        (d * (u + 1) * u * (u - 1)) / 6;
    }
  }
  return out;
}

function straight(y: Float64Array, first: number, step: number, times: Float64Array): Float64Array {
  const out = new Float64Array(times.length);
  for (let k = 0; k < times.length; k++) {
    const t = times[k] as number;
    const i = placeOf(t, first, step, y.length - 2);
    const u = Math.max(0, Math.min(1, (t - first) / step - i));
    out[k] = (1 - u) * (y[i] as number) + u * (y[i + 1] as number);
  }
  return out;
}
