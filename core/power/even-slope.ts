import { narrowestHalfWidth } from './gather.ts';
import { lineRows, parabolaRows, type Samples, tricube } from './local-polynomial.ts';
import { widthOfKernel } from './slope-kernel.ts';
import { risksFrom, type Smoother } from './smoother-choice.ts';

/*
 * Local polynomials over samples that lie evenly and weigh the same, as those of a dense log do once they are
 * gathered. All windows that no end cuts are one: their weights and covariances are worked out once. Sums of a
 * window that an end cuts are differences of running sums, and what holds at one end holds in the mirror at the
 * other. Same results as slope-estimate's general way.
 */

/** Evenly spaced samples of one weight; only the two at the ends may weigh something else, both the same. */
export type EvenSamples = {
  readonly first: number;
  readonly step: number;
  readonly value: Float64Array;
  /** Of an inner sample, 1 / variance. */
  readonly weight: number;
  /** Weight of the first and of the last sample over that of an inner one. */
  readonly end: number;
};

/** Uneven by less than this share of a step moves no weight that counts; seconds since 1970 have no more digits. */
const evenWithin = 1e-4;
/** Steps wider than this are too wide to be read between by cubics [s]: a half of the narrowest half width. */
const widestStep = 0.5 * narrowestHalfWidth;
/** One variance stands for all inner samples where each is within this factor of their mean. */
const alikeWithin = 2;

/** The samples as even ones; null where they are not. */
export function evenOf({ time, value, weight }: Samples): EvenSamples | null {
  const n = time.length;
  const first = time[0] as number;
  const step = ((time[n - 1] as number) - first) / (n - 1);
  if (n < 8 || !(step > 0 && step <= widestStep)) return null;
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let i = 1; i < n - 1; i++) {
    if (Math.abs((time[i] as number) - first - i * step) > evenWithin * step) return null;
    const w = weight[i] as number;
    sum += w;
    if (w < least) least = w;
    if (w > most) most = w;
  }
  const mean = sum / (n - 2);
  if (least * alikeWithin < mean || most > alikeWithin * mean) return null;
  return {
    first,
    step,
    value,
    weight: mean,
    end: ((weight[0] as number) + (weight[n - 1] as number)) / 2 / mean,
  };
}

/** Tricube of one half width over whole steps, and its running sums. */
type Kernel = {
  /** Steps to either side that have a weight. */
  readonly reach: number;
  /** Half width [s]. */
  readonly h: number;
  readonly weight: Float64Array;
  readonly u: Float64Array;
  /** For k from 0 to 4, sums of weight times u^k over the offsets before the i-th; 2 reach + 2 of each. */
  readonly sums: Float64Array;
};

function kernelOf(h: number, step: number): Kernel {
  const reach = Math.floor(h / step + 1e-9);
  const n = 2 * reach + 1;
  const weight = new Float64Array(n);
  const u = new Float64Array(n);
  const sums = new Float64Array(5 * (n + 1));
  for (let i = 0; i < n; i++) {
    const x = ((i - reach) * step) / h;
    let p = tricube(x);
    weight[i] = p;
    u[i] = x;
    for (let k = 0; k < 5; k++) {
      sums[k * (n + 1) + i + 1] = (sums[k * (n + 1) + i] as number) + p;
      p *= x;
    }
  }
  return { reach, h, weight, u, sums };
}

/** Fits of one signal. A window at an end that holds fewer than four samples is widened until it holds them. */
export class EvenFits {
  readonly samples: EvenSamples;
  readonly #kernels = new Map<number, Kernel>();
  readonly #widened: Kernel;
  readonly #moments = new Float64Array(5);

  constructor(samples: EvenSamples) {
    this.samples = samples;
    this.#widened = kernelOf(3.15 * samples.step, samples.step);
  }

  kernel(h: number): Kernel {
    const known = this.#kernels.get(h);
    if (known) return known;
    const made = kernelOf(h, this.samples.step);
    this.#kernels.set(h, made);
    return made;
  }

  /** The kernel to be used at a sample. */
  at(kernel: Kernel, place: number): Kernel {
    const n = this.samples.value.length;
    return Math.min(kernel.reach, place) + Math.min(kernel.reach, n - 1 - place) < 3 ? this.#widened : kernel;
  }

  /** Whether no end cuts the window, nor is in it. */
  isInner(kernel: Kernel, place: number): boolean {
    return place > kernel.reach && place + kernel.reach < this.samples.value.length - 1;
  }

  /** Rows of line and parabola at a sample. */
  rowsAt(kernel: Kernel, place: number) {
    const { value, end } = this.samples;
    const n = value.length;
    const { reach, sums } = kernel;
    const size = 2 * reach + 2;
    const from = Math.max(0, reach - place);
    const to = Math.min(2 * reach + 1, reach + n - place);
    const moments = this.#moments;
    for (let k = 0; k < 5; k++)
      moments[k] = (sums[k * size + to] as number) - (sums[k * size + from] as number);
    if (place <= reach) addMoments(moments, kernel, reach - place, end - 1);
    if (place + reach >= n - 1) addMoments(moments, kernel, reach + n - 1 - place, end - 1);
    const [s0, s1, s2, s3, s4] = moments as unknown as [number, number, number, number, number];
    const line = lineRows(s0, s1, s2);
    return { line, parabola: parabolaRows(s0, s1, s2, s3, s4) ?? line };
  }
}

function addMoments(moments: Float64Array, kernel: Kernel, i: number, weight: number): void {
  let p = weight * (kernel.weight[i] as number);
  const u = kernel.u[i] as number;
  for (let k = 0; k < 5; k++) {
    moments[k] = (moments[k] as number) + p;
    p *= u;
  }
}

/** Weights of each smoother at one lattice point, times the deviation of their samples; kept between calls. */
let scratch = new Float64Array(0);

/** As smoother-choice's risks, of line and parabola of each width in turn. */
export function evenRisks(fits: EvenFits, widths: readonly number[], lattice: number): number[] {
  const { value, weight } = fits.samples;
  const n = value.length;
  const count = 2 * widths.length;
  if (scratch.length < count * n) scratch = new Float64Array(count * n);
  const slopes = new Float64Array(count * lattice);
  const shared = new Float64Array(count * count);
  /** Covariances at one inner point, and at how many points each pair is inner. */
  const inner = new Float64Array(count * count);
  const innerPoints = new Int32Array(widths.length);
  const kernels = widths.map((h) => fits.kernel(h));
  const froms = new Int32Array(widths.length);
  const tos = new Int32Array(widths.length);
  for (let i = 0; i < lattice / 2; i++) {
    const place = Math.round(((n - 1) * (i + 0.5)) / lattice);
    let innerWidths = 0;
    while (innerWidths < kernels.length && fits.isInner(kernels[innerWidths] as Kernel, place)) innerWidths++;
    for (let a = 0; a < kernels.length; a++) {
      const kernel = fits.at(kernels[a] as Kernel, place);
      froms[a] = Math.max(0, place - kernel.reach);
      tos[a] = Math.min(n, place + kernel.reach + 1);
      slopesAt(fits, kernel, place, 2 * a, slopes, i * count, (lattice - 1 - i) * count);
    }
    // The wider of two decides; at the first point where it is inner its covariances are taken for all.
    for (let b = 0; b < kernels.length; b++) {
      const isInner = b < innerWidths;
      if (isInner) innerPoints[b] = (innerPoints[b] as number) + 1;
      if (isInner && innerPoints[b] !== 1) continue;
      const into = isInner ? inner : shared;
      for (let a = 0; a <= b; a++) {
        const from = Math.max(froms[a] as number, froms[b] as number);
        addShared(into, count, n, a, b, from, Math.min(tos[a] as number, tos[b] as number));
      }
    }
  }
  for (let b = 0; b < widths.length; b++)
    for (let row = 0; row < 2 * b + 2; row++)
      for (let k = row * count + 2 * b; k < row * count + 2 * b + 2; k++)
        shared[k] =
          (2 * ((shared[k] as number) + (innerPoints[b] as number) * (inner[k] as number))) / weight;
  return risksFrom(slopes, shared, count, lattice);
}

/**
 * Slopes of line and parabola at one sample and at its mirror image, into `slopes`; their weights times deviation,
 * into the scratch.
 */
function slopesAt(
  fits: EvenFits,
  kernel: Kernel,
  place: number,
  row: number,
  slopes: Float64Array,
  at: number,
  mirroredAt: number,
): void {
  const { value, end } = fits.samples;
  const n = value.length;
  const { line, parabola } = fits.rowsAt(kernel, place);
  const [l0, l1] = line.slope;
  const [q0, q1, q2] = parabola.slope;
  const { reach, h, weight, u } = kernel;
  const from = Math.max(0, place - reach);
  const to = Math.min(n, place + reach + 1);
  const straightAt = row * n;
  const bentAt = straightAt + n;
  const shift = reach - place;
  const last = n - 1;
  let straight = 0;
  let bent = 0;
  let straightBack = 0;
  let bentBack = 0;
  for (let i = from; i < to; i++) {
    const x = u[i + shift] as number;
    const p = (weight[i + shift] as number) / h;
    const a = p * (l0 + l1 * x);
    const b = p * (q0 + x * (q1 + x * q2));
    scratch[straightAt + i] = a;
    scratch[bentAt + i] = b;
    const y = value[i] as number;
    const z = value[last - i] as number;
    straight += a * y;
    bent += b * y;
    straightBack -= a * z;
    bentBack -= b * z;
  }
  for (const i of [0, last]) {
    if (i < from || i >= to) continue;
    const a = scratch[straightAt + i] as number;
    const b = scratch[bentAt + i] as number;
    const y = (end - 1) * (value[i] as number);
    const z = (end - 1) * (value[last - i] as number);
    straight += a * y;
    bent += b * y;
    straightBack -= a * z;
    bentBack -= b * z;
    scratch[straightAt + i] = a * Math.sqrt(end);
    scratch[bentAt + i] = b * Math.sqrt(end);
  }
  slopes[at + row] = straight;
  slopes[at + row + 1] = bent;
  slopes[mirroredAt + row] = straightBack;
  slopes[mirroredAt + row + 1] = bentBack;
}

/** Adds the covariances of line and parabola of width a with those of width b. */
function addShared(
  shared: Float64Array,
  count: number,
  n: number,
  a: number,
  b: number,
  from: number,
  to: number,
): void {
  const a1 = 2 * a * n;
  const a2 = a1 + n;
  const b1 = 2 * b * n;
  const b2 = b1 + n;
  let s11 = 0;
  let s12 = 0;
  let s21 = 0;
  let s22 = 0;
  for (let i = from; i < to; i++) {
    const x1 = scratch[a1 + i] as number;
    const x2 = scratch[a2 + i] as number;
    const y1 = scratch[b1 + i] as number;
    const y2 = scratch[b2 + i] as number;
    s11 += x1 * y1;
    s12 += x1 * y2;
    s21 += x2 * y1;
    s22 += x2 * y2;
  }
  const upper = 2 * a * count + 2 * b;
  const lower = upper + count;
  shared[upper] = (shared[upper] as number) + s11;
  shared[upper + 1] = (shared[upper + 1] as number) + s12;
  if (a !== b) shared[lower] = (shared[lower] as number) + s21;
  shared[lower + 1] = (shared[lower + 1] as number) + s22;
}

/** The mean of all smoothers at every so many samples, and its slope weights at one in the middle. */
export function evenCurve(fits: EvenFits, smoothers: readonly Smoother[], stride: number) {
  const { value: y, weight: one, end, step } = fits.samples;
  const n = y.length;
  const last = n - 1;
  const count = last / stride + 1;
  const kernels = smoothers.map((s) => fits.kernel(s.halfWidth));
  // The widened kernel reaches three steps.
  const widest = Math.max(3, ...kernels.map((k) => k.reach));
  /** Weights by offset from the sample; that of the sample itself is at `widest`. */
  const values = new Float64Array(2 * widest + 1);
  const slopes = new Float64Array(2 * widest + 1);
  const curve = {
    value: new Float64Array(count),
    slope: new Float64Array(count),
    valueVariance: new Float64Array(count),
    slopeVariance: new Float64Array(count),
    covariance: new Float64Array(count),
  };
  let isInnerKnown = false;
  let valueVariance = 0;
  let slopeVariance = 0;
  let covariance = 0;
  for (let k = 0; 2 * k < count; k++) {
    const place = k * stride;
    const isInner = place > widest && place + widest < last;
    const from = Math.max(-widest, -place);
    const to = Math.min(widest, last - place);
    if (!isInner || !isInnerKnown) {
      isInnerKnown = isInner;
      values.fill(0);
      slopes.fill(0);
      for (let s = 0; s < smoothers.length; s++)
        addWeights(fits, smoothers[s] as Smoother, kernels[s] as Kernel, place, values, slopes, widest);
      valueVariance = 0;
      slopeVariance = 0;
      covariance = 0;
      // At an end the weight is `end` times as large, the variance so much smaller.
      for (const i of [widest - place, widest + last - place]) {
        if (i < 0 || i > 2 * widest) continue;
        const a = values[i] as number;
        const b = slopes[i] as number;
        values[i] = end * a;
        slopes[i] = end * b;
        const more = end - end * end;
        valueVariance += more * a * a;
        slopeVariance += more * b * b;
        covariance += more * a * b;
      }
      for (let i = from + widest; i <= to + widest; i++) {
        const a = values[i] as number;
        const b = slopes[i] as number;
        valueVariance += a * a;
        slopeVariance += b * b;
        covariance += a * b;
      }
    }
    const mirrored = last - place;
    let value = 0;
    let slope = 0;
    let valueBack = 0;
    let slopeBack = 0;
    for (let i = from; i <= to; i++) {
      const a = values[i + widest] as number;
      const b = slopes[i + widest] as number;
      const v = y[place + i] as number;
      const z = y[mirrored - i] as number;
      value += a * v;
      slope += b * v;
      valueBack += a * z;
      slopeBack -= b * z;
    }
    const back = count - 1 - k;
    curve.value[k] = value;
    curve.value[back] = valueBack;
    curve.slope[k] = slope;
    curve.slope[back] = slopeBack;
    curve.valueVariance[k] = curve.valueVariance[back] = valueVariance / one;
    curve.slopeVariance[k] = curve.slopeVariance[back] = slopeVariance / one;
    curve.covariance[k] = covariance / one;
    curve.covariance[back] = -covariance / one;
  }
  // The last that were worked out are those of the sample in the middle.
  return {
    ...curve,
    fullWidth: widthOfKernel(
      slopes,
      slopes.map((_, i) => i * step),
    ),
  };
}

/** Adds one smoother's weights at a sample, each by its offset; those of an end sample as of any other. */
function addWeights(
  fits: EvenFits,
  smoother: Smoother,
  usual: Kernel,
  place: number,
  values: Float64Array,
  slopes: Float64Array,
  middle: number,
): void {
  const n = fits.samples.value.length;
  const kernel = fits.at(usual, place);
  const { line, parabola } = fits.rowsAt(kernel, place);
  const { reach, h, weight, u } = kernel;
  const { line: byLine, parabola: byParabola } = smoother;
  const v0 = byLine * line.value[0] + byParabola * parabola.value[0];
  const v1 = byLine * line.value[1] + byParabola * parabola.value[1];
  const v2 = byLine * line.value[2] + byParabola * parabola.value[2];
  const b0 = (byLine * line.slope[0] + byParabola * parabola.slope[0]) / h;
  const b1 = (byLine * line.slope[1] + byParabola * parabola.slope[1]) / h;
  const b2 = (byLine * line.slope[2] + byParabola * parabola.slope[2]) / h;
  const to = Math.min(reach, n - 1 - place);
  const shift = middle - reach;
  for (let k = Math.max(-reach, -place) + reach; k <= to + reach; k++) {
    const x = u[k] as number;
    const p = weight[k] as number;
    values[k + shift] = (values[k + shift] as number) + p * (v0 + x * (v1 + x * v2));
    slopes[k + shift] = (slopes[k + shift] as number) + p * (b0 + x * (b1 + x * b2));
  }
}
