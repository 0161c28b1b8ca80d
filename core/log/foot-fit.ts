import { carCount, courseAt, type FootTravel, footTravels, middlingCars } from './foot-travel.ts';
import { indexAt } from './speed-ratio.ts';
import type { Span } from './time-axis.ts';

/** What the channel does with the foot: it follows it as pressure does, or its slope does as engine speed's. */
export type FootFit = {
  readonly way: 'down' | 'lift';
  readonly as: 'pressure' | 'speed';
  /** Where half of the change is looked for [s]. */
  readonly from_s: number;
  readonly to_s: number;
  /** Samples so far either side of that count [s]. */
  readonly before_s: number;
  readonly after_s: number;
  /** Pressure once the plate is open, before the charger adds to it [Pa gauge], and how well it is known. */
  readonly open?: { readonly level: number; readonly within: number };
  /** Of one sample beside the model. */
  readonly noise: number;
};

/** How likely each moment is, for each sort of car, beside the likeliest travel of all. */
export type MomentTable = {
  /** First moment of the table [s]. */
  readonly start_s: number;
  /** One row of `width` per sort of car. */
  readonly likelihood: Float64Array;
  readonly width: number;
  /** Whether it says anything of the sort of car. */
  readonly tellsCar: boolean;
};

/** Moments are tried so far apart [s]; slow logs have steps of 0.05 to 0.1. */
const momentStep_s = 0.02;
/** A foot leaves the pedal faster than it comes down (common practice). */
const longestLift_s = 0.2;
const mostSamples = 60;

/**
 * How likely it is that the foot met its stop, or left it, at each moment around a coarse end: every travel of a
 * foot at every moment is laid under the raw samples by least squares, its height and what was going on before free.
 *
 *   pressure  p = a + b f(t) + c g(t)                  f the plate and manifold, g the charger behind it
 *   speed     w = a + b t + c F(t) + d G(t)            down; F and G their integrals
 *             w = a + b t + c F(t)                      lift
 *
 * The likelihood of a travel is (noise^2 n + squared error)^(-n/2), Student's in place of a noise that nobody knows.
 *
 * @returns null where too few samples stand
 */
export function momentTable(
  values: Float64Array,
  time: Float64Array,
  segment: Span,
  fit: FootFit,
): MomentTable | null {
  const a = indexAt(time, fit.from_s - fit.before_s, segment.from, segment.to);
  const b = indexAt(time, fit.to_s + fit.after_s, segment.from, segment.to);
  const stride = Math.max(1, Math.ceil((b - a) / mostSamples));
  const t: number[] = [];
  const y: number[] = [];
  const origin = (fit.from_s + fit.to_s) / 2;
  for (let i = a; i + stride <= b; i += stride) {
    let [st, sy, n] = [0, 0, 0];
    for (let k = i; k < i + stride; k++) {
      const v = values[k] ?? Number.NaN;
      if (Number.isNaN(v)) continue;
      st += time[k] ?? 0;
      sy += v;
      n++;
    }
    if (n > 0) {
      t.push(st / n - origin);
      y.push(sy / n);
    }
  }
  if (t.length < 7) return null;
  const least = fit.from_s - 0.7;
  const width = Math.ceil((fit.to_s + 0.9 - least) / momentStep_s) + 1;
  let scale = Number.NEGATIVE_INFINITY;
  const sums = new Float64Array(carCount * width);
  const entries: { at: number; log: number }[] = [];
  for (const travel of footTravels(fit.way)) {
    if (fit.way === 'lift' && travel.travel_s > longestLift_s) continue;
    // A speed is the integral of it all, and hardly knows one car from another.
    if (fit.as === 'speed' && !middlingCars.includes(travel.car)) continue;
    for (let half = fit.from_s; half <= fit.to_s; half += momentStep_s) {
      const first = half - travel.half_s;
      const error = squaredError(t, y, travel, first - origin, fit);
      if (!Number.isFinite(error)) continue;
      const log = -0.5 * t.length * Math.log(fit.noise ** 2 * t.length + error);
      const moment = fit.way === 'down' ? first + travel.travel_s : first;
      const cell = Math.round((moment - least) / momentStep_s);
      if (cell < 0 || cell >= width) continue;
      entries.push({ at: travel.car * width + cell, log });
      if (log > scale) scale = log;
    }
  }
  if (entries.length === 0) return null;
  for (const { at, log } of entries) sums[at] = (sums[at] ?? 0) + Math.exp(log - scale);
  return { start_s: least, likelihood: sums, width, tellsCar: fit.as === 'speed' || fit.open !== undefined };
}

/** Moment and the half width of its 90 % interval [s], with what all ends of the log say of the car. */
export function momentsOf(
  tables: readonly (MomentTable | null)[],
): ({ at_s: number; within_s: number } | null)[] {
  const weights = new Float64Array(carCount);
  for (const table of tables) {
    if (!table?.tellsCar) continue;
    for (let car = 0; car < carCount; car++) {
      let sum = 0;
      for (let k = 0; k < table.width; k++) sum += table.likelihood[car * table.width + k] ?? 0;
      weights[car] = (weights[car] ?? 0) + Math.log(sum + 1e-300);
    }
  }
  const most = weights.reduce((x, w) => Math.max(x, w), Number.NEGATIVE_INFINITY);
  return tables.map((table) => {
    if (!table) return null;
    const { width } = table;
    const density = new Float64Array(width);
    for (let car = 0; car < carCount; car++) {
      let own = 0;
      for (let k = 0; k < width; k++) own += table.likelihood[car * width + k] ?? 0;
      const weight = Math.exp((weights[car] ?? 0) - most);
      if (!(own > 0)) continue;
      for (let k = 0; k < width; k++)
        density[k] = (density[k] ?? 0) + (weight * (table.likelihood[car * width + k] ?? 0)) / own;
    }
    return summary(density, table.start_s);
  });
}

function summary(density: Float64Array, start_s: number): { at_s: number; within_s: number } | null {
  const total = density.reduce((a, b) => a + b, 0);
  if (!(total > 0)) return null;
  const quantile = (share: number) => {
    let sum = 0;
    for (let k = 0; k < density.length; k++) {
      sum += density[k] ?? 0;
      if (sum >= share * total) return start_s + k * momentStep_s;
    }
    return start_s + density.length * momentStep_s;
  };
  const [low, high] = [quantile(0.05), quantile(0.95)];
  const mean = density.reduce((sum, d, k) => sum + d * (start_s + k * momentStep_s), 0) / total;
  return { at_s: mean, within_s: Math.max(high - mean, mean - low) };
}

const rows = 4;
const normal = new Float64Array(rows * rows);
const right = new Float64Array(rows);
const base = new Float64Array(rows);

/** Squared error of the best fit of one travel, by Cholesky; infinite where the change goes the wrong way. */
function squaredError(
  t: readonly number[],
  y: readonly number[],
  travel: FootTravel,
  first: number,
  fit: FootFit,
): number {
  const isPressure = fit.as === 'pressure';
  const n = fit.way === 'lift' ? 3 : rows;
  normal.fill(0);
  right.fill(0);
  let yy = 0;
  const level = y[0] ?? 0;
  for (let i = 0; i < t.length; i++) {
    const ti = t[i] ?? 0;
    const v = (y[i] ?? 0) - (isPressure ? 0 : level);
    base[0] = 1;
    if (isPressure) {
      base[1] = courseAt(travel.share, ti - first);
      base[2] = courseAt(travel.late, ti - first);
      base[3] = courseAt(travel.lateIntegral, ti - first);
    } else {
      base[1] = ti;
      base[2] = courseAt(travel.integral, ti - first);
      base[3] = fit.way === 'down' ? courseAt(travel.lateIntegral, ti - first) : ti * ti;
    }
    for (let r = 0; r < n; r++) {
      const br = base[r] ?? 0;
      right[r] = (right[r] ?? 0) + br * v;
      for (let c = 0; c <= r; c++) normal[r * rows + c] = (normal[r * rows + c] ?? 0) + br * (base[c] ?? 0);
    }
    yy += v * v;
  }
  if (fit.open) {
    // One more observation: level before and change add up to what an open plate lets through.
    const weight = (fit.noise / fit.open.within) ** 2;
    normal[0] = (normal[0] ?? 0) + weight;
    normal[rows] = (normal[rows] ?? 0) + weight;
    normal[rows + 1] = (normal[rows + 1] ?? 0) + weight;
    right[0] = (right[0] ?? 0) + weight * fit.open.level;
    right[1] = (right[1] ?? 0) + weight * fit.open.level;
    yy += weight * fit.open.level ** 2;
  }
  // Cholesky in place; what the right side becomes tells how much is explained.
  let explained = 0;
  for (let r = 0; r < n; r++) {
    for (let c = 0; c <= r; c++) {
      let s = normal[r * rows + c] ?? 0;
      for (let k = 0; k < c; k++) s -= (normal[r * rows + k] ?? 0) * (normal[c * rows + k] ?? 0);
      if (c < r) normal[r * rows + c] = s / (normal[c * rows + c] ?? 1);
      else {
        if (!(s > 1e-12)) return Number.POSITIVE_INFINITY;
        normal[r * rows + r] = Math.sqrt(s);
      }
    }
    let s = right[r] ?? 0;
    for (let k = 0; k < r; k++) s -= (normal[r * rows + k] ?? 0) * (right[k] ?? 0);
    right[r] = s / (normal[r * rows + r] ?? 1);
    explained += (right[r] ?? 0) ** 2;
  }
  return Math.max(0, yy - explained);
}
