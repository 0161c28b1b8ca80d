import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { carCount, type FootTravel, footTravels, middlingCars, travelStep_s } from './foot-travel.ts';

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
/** Of `momentStep_s`, in the first look. */
const coarseSteps = 4;
/** So far below the likeliest at both of its neighbours a moment between them could not count. */
const outOfTheQuestion = 20;

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
 * @param cars  sorts of car that come into question; null is all
 * @returns     null where too few samples stand
 */
export function momentTable(
  values: Float64Array,
  time: Float64Array,
  segment: Span,
  fit: FootFit,
  cars: readonly number[] | null = null,
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
  if (t.length < (fit.as === 'pressure' ? 5 : 7)) return null;
  const least = fit.from_s - 0.7;
  const width = Math.ceil((fit.to_s + 0.9 - least) / momentStep_s) + 1;
  let scale = Number.NEGATIVE_INFINITY;
  const sums = new Float64Array(carCount * width);
  const samples = samplesOf(t, y, fit);
  const logAt = (travel: FootTravel, half: number) => {
    const error = squaredError(samples, travel, half - travel.half_s - origin);
    return -0.5 * t.length * Math.log(fit.noise ** 2 * t.length + error);
  };
  // Few travels lie under a speed, and its noise is so small that steps would miss the moment.
  const coarse = fit.as === 'speed' ? 1 : coarseSteps;
  // A coarse look first: at most moments most travels are out of the question.
  const moments = Math.floor((fit.to_s - fit.from_s) / momentStep_s + 1e-9) + 1;
  const looks: { readonly travel: FootTravel; readonly logs: Float64Array }[] = [];
  for (const travel of footTravels(fit.way)) {
    if (fit.way === 'lift' && travel.travel_s > longestLift_s) continue;
    if (cars && !cars.includes(travel.car)) continue;
    // A speed is the integral of it all, and hardly knows one car from another.
    if (fit.as === 'speed' && !middlingCars.includes(travel.car)) continue;
    const logs = new Float64Array(Math.ceil(moments / coarse));
    for (let c = 0; c < logs.length; c++) {
      const log = logAt(travel, fit.from_s + c * coarse * momentStep_s);
      logs[c] = log;
      if (log > scale) scale = log;
    }
    looks.push({ travel, logs });
  }
  const entries: { at: number; log: number }[] = [];
  for (const { travel, logs } of looks) {
    for (let k = 0; k < moments; k++) {
      const c = Math.floor(k / coarse);
      const near = Math.max(logs[c] as number, logs[c + 1] ?? Number.NEGATIVE_INFINITY);
      if (near < scale - outOfTheQuestion) continue;
      const half = fit.from_s + k * momentStep_s;
      const log = k % coarse === 0 ? (logs[c] as number) : logAt(travel, half);
      if (log === Number.NEGATIVE_INFINITY) continue;
      const moment = half - travel.half_s + travel.met_s;
      const cell = Math.round((moment - least) / momentStep_s);
      if (cell >= 0 && cell < width) entries.push({ at: travel.car * width + cell, log });
    }
  }
  if (entries.length === 0) return null;
  scale = entries.reduce((most, { log }) => Math.max(most, log), Number.NEGATIVE_INFINITY);
  for (const { at, log } of entries) sums[at] = (sums[at] ?? 0) + Math.exp(log - scale);
  return { start_s: least, likelihood: sums, width, tellsCar: fit.as === 'speed' || fit.open !== undefined };
}

/** Log of how likely each sort of car is by what all ends say together. */
function carWeights(tables: readonly (MomentTable | null)[]): Float64Array {
  const weights = new Float64Array(carCount);
  for (const table of tables) {
    if (!table?.tellsCar) continue;
    for (let car = 0; car < carCount; car++) {
      let sum = 0;
      for (let k = 0; k < table.width; k++) sum += table.likelihood[car * table.width + k] ?? 0;
      weights[car] = (weights[car] ?? 0) + Math.log(sum + 1e-300);
    }
  }
  return weights;
}

/** Sorts of car that are not out of the question by the ends looked at so far. */
export function carsInQuestion(tables: readonly (MomentTable | null)[]): number[] {
  const weights = carWeights(tables);
  const most = Math.max(...weights);
  return Array.from(weights.keys()).filter((car) => (weights[car] ?? 0) > most - outOfTheQuestion);
}

/** Moment and the half width of its 90 % interval [s], with what all ends of the log say of the car. */
export function momentsOf(
  tables: readonly (MomentTable | null)[],
): ({ at_s: number; within_s: number } | null)[] {
  const weights = carWeights(tables);
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

/** Samples of one end, and the sums over all of them that no travel changes. */
type FootSamples = {
  /** From the middle of what is looked at [s], rising. */
  readonly t: Float64Array;
  /** Pressure, or speed beside the first of it. */
  readonly v: Float64Array;
  readonly sumT: number;
  readonly sumTT: number;
  readonly sumV: number;
  readonly sumTV: number;
  readonly sumVV: number;
  readonly isPressure: boolean;
  readonly isLift: boolean;
  /** What is known of an open plate, as so many samples, none where nothing is; and its level. */
  readonly openWeight: number;
  readonly openLevel: number;
};

function samplesOf(t: readonly number[], y: readonly number[], fit: FootFit): FootSamples {
  const level = fit.as === 'pressure' ? 0 : (y[0] as number);
  const v = Float64Array.from(y, (x) => x - level);
  let sumT = 0;
  let sumTT = 0;
  let sumV = 0;
  let sumTV = 0;
  let sumVV = 0;
  for (let i = 0; i < v.length; i++) {
    const ti = t[i] as number;
    const vi = v[i] as number;
    sumT += ti;
    sumTT += ti * ti;
    sumV += vi;
    sumTV += ti * vi;
    sumVV += vi * vi;
  }
  return {
    t: Float64Array.from(t),
    v,
    sumT,
    sumTT,
    sumV,
    sumTV,
    sumVV,
    isPressure: fit.as === 'pressure',
    isLift: fit.way === 'lift',
    openWeight: fit.open ? (fit.noise / fit.open.within) ** 2 : 0,
    openLevel: fit.open?.level ?? 0,
  };
}

/**
 * Squared error of the best fit of one travel, by elimination; infinite where the rows do not differ. Written out:
 * a log without a pedal asks for it some thousand times a pull.
 */
function squaredError(samples: FootSamples, travel: FootTravel, first: number): number {
  const { t, v, sumT, sumTT, sumV, sumTV, sumVV, isPressure, isLift, openWeight: w, openLevel } = samples;
  const one = isPressure ? travel.share : travel.integral;
  const two = isPressure ? travel.late : travel.lateIntegral;
  const three = travel.lateIntegral;
  const last = one.length - 2;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s11 = 0;
  let s12 = 0;
  let s13 = 0;
  let s22 = 0;
  let s23 = 0;
  let s33 = 0;
  let t1 = 0;
  let t2 = 0;
  let r1 = 0;
  let r2 = 0;
  let r3 = 0;
  // Nothing before the first move, straight on beyond the course's end; all courses stand on one grid.
  for (let i = t.length - 1; i >= 0; i--) {
    const ti = t[i] as number;
    if (!(ti > first)) break;
    const vi = v[i] as number;
    const x = (ti - first) / travelStep_s;
    const k = x < last ? x | 0 : last;
    const part = x - k;
    const c1 = one[k] as number;
    const c2 = two[k] as number;
    const b1 = c1 + part * ((one[k + 1] as number) - c1);
    const b2 = c2 + part * ((two[k + 1] as number) - c2);
    s1 += b1;
    s2 += b2;
    s11 += b1 * b1;
    s12 += b1 * b2;
    s22 += b2 * b2;
    r1 += b1 * vi;
    r2 += b2 * vi;
    if (isPressure) {
      const c3 = three[k] as number;
      const b3 = c3 + part * ((three[k + 1] as number) - c3);
      s3 += b3;
      s13 += b1 * b3;
      s23 += b2 * b3;
      s33 += b3 * b3;
      r3 += b3 * vi;
    } else {
      t1 += ti * b1;
      t2 += ti * b2;
    }
  }
  const n = t.length;
  if (!isPressure) {
    if (isLift) return Math.max(0, sumVV - eliminated(n, sumT, sumTT, s1, t1, s11, sumV, sumTV, r1));
    return remainder(sumVV, n, sumT, sumTT, s1, t1, s11, s2, t2, s12, s22, sumV, sumTV, r1, r2);
  }
  // One more observation: level before and change add up to what an open plate lets through.
  const more = w * openLevel;
  return remainder(
    sumVV + more * openLevel,
    n + w,
    s1 + w,
    s11 + w,
    s2,
    s12,
    s22,
    s3,
    s13,
    s23,
    s33,
    sumV + more,
    r1 + more,
    r2,
    r3,
  );
}

/** No pivot is smaller: rows that do not differ tell nothing. */
const leastPivot = 1e-12;

/** What three unknowns explain of the squares; the matrix row by row below its diagonal. */
function eliminated(
  m00: number,
  m10: number,
  m11: number,
  m20: number,
  m21: number,
  m22: number,
  r0: number,
  r1: number,
  r2: number,
): number {
  const none = Number.NEGATIVE_INFINITY;
  if (!(m00 > leastPivot)) return none;
  const l10 = m10 / m00;
  const l20 = m20 / m00;
  const d1 = m11 - l10 * m10;
  if (!(d1 > leastPivot)) return none;
  const u21 = m21 - l20 * m10;
  const l21 = u21 / d1;
  const d2 = m22 - l20 * m20 - l21 * u21;
  if (!(d2 > leastPivot)) return none;
  const z1 = r1 - l10 * r0;
  const z2 = r2 - l20 * r0 - l21 * z1;
  return (r0 * r0) / m00 + (z1 * z1) / d1 + (z2 * z2) / d2;
}

/** What four unknowns leave of the squares; the matrix row by row below its diagonal. */
function remainder(
  squares: number,
  m00: number,
  m10: number,
  m11: number,
  m20: number,
  m21: number,
  m22: number,
  m30: number,
  m31: number,
  m32: number,
  m33: number,
  r0: number,
  r1: number,
  r2: number,
  r3: number,
): number {
  const explained = eliminated(m00, m10, m11, m20, m21, m22, r0, r1, r2);
  if (explained === Number.NEGATIVE_INFINITY) return Number.POSITIVE_INFINITY;
  const l10 = m10 / m00;
  const l20 = m20 / m00;
  const l30 = m30 / m00;
  const d1 = m11 - l10 * m10;
  const l21 = (m21 - l20 * m10) / d1;
  const d2 = m22 - l20 * m20 - l21 * l21 * d1;
  const u31 = m31 - l30 * m10;
  const l31 = u31 / d1;
  const u32 = m32 - l30 * m20 - l31 * (m21 - l20 * m10);
  const l32 = u32 / d2;
  const d3 = m33 - l30 * m30 - l31 * u31 - l32 * u32;
  if (!(d3 > leastPivot)) return Number.POSITIVE_INFINITY;
  const z1 = r1 - l10 * r0;
  const z2 = r2 - l20 * r0 - l21 * z1;
  const z3 = r3 - l30 * r0 - l31 * z1 - l32 * z2;
  return Math.max(0, squares - explained - (z3 * z3) / d3);
}
