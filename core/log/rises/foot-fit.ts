import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { type FootFit, footSamples, squaredError } from './foot-error.ts';
import { carCount, type FootTravel, footTravels, middlingCars } from './foot-travel.ts';

/** How likely each moment is, for each sort of car, beside the likeliest travel of all. */
export type MomentTable = {
  /** First moment of the table [s]. */
  readonly start_s: number;
  /** One row of `width` per sort of car and pace of the foot, quick ones first. */
  readonly likelihood: Float64Array;
  readonly width: number;
  /** Whether it says anything of the sort of car. */
  readonly tellsCar: boolean;
  readonly as: FootFit['as'];
};

/** Moments are tried so far apart [s]; slow logs have steps of 0.05 to 0.1. */
const momentStep_s = 0.02;
/** A foot leaves the pedal faster than it comes down (common practice). */
const longestLift_s = 0.2;
const mostSamples = 60;
/** Of `momentStep_s`, in the first look. */
const coarseSteps = 4;
/** A foot that is down within this time is quick [s] (common practice). */
const quickFoot_s = 0.2;
/**
 * How often the foot is quick of a driver who floors the pedal at once, and of one whose foot takes any of the times
 * that are tried (common practice).
 */
const quickShares = [0.95, 1 / 3];
/** So many drivers are of the first sort. Engine speed hardly tells which, pressure does (common practice). */
const flooring = { speed: 0.3, pressure: 0.4 } as const;
/** An end is held to this [s]. */
const margin_s = 0.15;
/** Two moments are as likely within so much (rounding). */
const alike = 1e-6;
/** A sort of driver in a sort of car. */
const storyCount = carCount * quickShares.length;

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
  const sums = new Float64Array(2 * carCount * width);
  const samples = footSamples(t, y, fit);
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
      const row = travel.travel_s > quickFoot_s ? carCount + travel.car : travel.car;
      if (cell >= 0 && cell < width) entries.push({ at: row * width + cell, log });
    }
  }
  if (entries.length === 0) return null;
  scale = entries.reduce((most, { log }) => Math.max(most, log), Number.NEGATIVE_INFINITY);
  for (const { at, log } of entries) sums[at] = (sums[at] ?? 0) + Math.exp(log - scale);
  const tellsCar = fit.as === 'speed' || fit.open !== undefined;
  return { start_s: least, likelihood: sums, width, tellsCar, as: fit.as };
}

/** How likely each moment is in one story of driver and car. */
function densityOf({ likelihood, width }: MomentTable, story: number): Float64Array {
  const car = story % carCount;
  const quick = quickShares[story < carCount ? 0 : 1] ?? 0;
  const slow = (carCount + car) * width;
  return Float64Array.from(
    { length: width },
    (_, k) =>
      // Of the times that are tried for a foot a third are quick.
      3 * quick * (likelihood[car * width + k] ?? 0) + 1.5 * (1 - quick) * (likelihood[slow + k] ?? 0),
  );
}

const sumOf = (values: Float64Array) => values.reduce((a, b) => a + b, 0);

/** Log of how likely each story is by what all ends say together. */
function storyWeights(tables: readonly (MomentTable | null)[]): Float64Array {
  const as = tables.find((table) => table !== null)?.as;
  const floors = as ? flooring[as] : 0.5;
  const weights = Float64Array.from({ length: storyCount }, (_, story) =>
    Math.log(story < carCount ? floors : 1 - floors),
  );
  for (const table of tables) {
    if (!table?.tellsCar) continue;
    for (let story = 0; story < storyCount; story++)
      weights[story] = (weights[story] ?? 0) + Math.log(sumOf(densityOf(table, story)) + 1e-300);
  }
  return weights;
}

/** Sorts of car that are not out of the question by the ends looked at so far. */
export function carsInQuestion(tables: readonly (MomentTable | null)[]): number[] {
  const weights = storyWeights(tables);
  const most = Math.max(...weights);
  const stories = Array.from(weights.keys()).filter((i) => (weights[i] ?? 0) > most - outOfTheQuestion);
  return [...new Set(stories.map((story) => story % carCount))];
}

/** Moment and the half width of its 90 % interval [s], with what all ends of the log say of driver and car. */
export function momentsOf(
  tables: readonly (MomentTable | null)[],
): ({ at_s: number; within_s: number } | null)[] {
  const weights = storyWeights(tables);
  const most = weights.reduce((x, w) => Math.max(x, w), Number.NEGATIVE_INFINITY);
  return tables.map((table) => {
    if (!table) return null;
    const density = new Float64Array(table.width);
    for (let story = 0; story < storyCount; story++) {
      const weight = Math.exp((weights[story] ?? 0) - most);
      if (weight < 1e-9) continue;
      const own = densityOf(table, story);
      const sum = sumOf(own);
      if (!(sum > 0)) continue;
      for (let k = 0; k < density.length; k++)
        density[k] = (density[k] ?? 0) + (weight * (own[k] ?? 0)) / sum;
    }
    return summary(density, table);
  });
}

function summary(
  density: Float64Array,
  { start_s, as }: MomentTable,
): { at_s: number; within_s: number } | null {
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
  // Slow feet leave no trace in a speed, and would draw the mean away from what is likeliest.
  const at_s = as === 'speed' ? likeliest(density, start_s) : mean;
  return { at_s, within_s: Math.max(high - at_s, at_s - low) };
}

/** The moment that has most within the margin [s]; the middle where several have as much. */
function likeliest(density: Float64Array, start_s: number): number {
  const half = Math.floor(margin_s / momentStep_s + 1e-9);
  let within = 0;
  let most = 0;
  let [first, last] = [0, 0];
  for (let k = 0; k < density.length + half; k++) {
    within += (density[k] ?? 0) - (density[k - 2 * half - 1] ?? 0);
    if (within > most * (1 + alike)) {
      most = within;
      first = k - half;
    }
    if (within > most * (1 - alike)) last = k - half;
  }
  return start_s + ((first + last) / 2) * momentStep_s;
}
