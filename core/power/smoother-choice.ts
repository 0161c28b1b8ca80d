import { narrowestHalfWidth } from './gather.ts';
import { lineRows, parabolaRows, type Samples, tricube, windowAround } from './local-polynomial.ts';

/** One half width, and the shares of its line and its parabola in the mean. */
export type Smoother = { readonly halfWidth: number; readonly line: number; readonly parabola: number };

/**
 * How closely the bandwidth is looked for: at how many instants smoothers are compared, and how much wider each half
 * width is than the one before. Coarse serves where the slope is only needed to tell how force changes in a pull.
 */
export const efforts = {
  fine: { lattice: 24, growth: 1.34 },
  coarse: { lattice: 12, growth: 1.8 },
} as const;
export type Effort = keyof typeof efforts;

/** Weights of all smoothers at one instant; kept between calls, since a log holds hundreds of pulls. */
let scratch = new Float64Array(0);

/**
 * Which local polynomials serve a signal, and with what share in the mean.
 *
 * Each smoother (degree 1 or 2, half width) is compared with every noisier one on a lattice of instants. What they
 * differ by beyond noise is the bias of the smoother one; bias plus variance is its risk (Goldenshluger and
 * Lepski's rule, with its two constants at 2). The share in the mean goes by exp(-(risk - least) / (0.3 least)): a
 * sharp choice would jump between neighbours that are equally good. One set of shares serves the whole signal:
 * chosen instant by instant they follow noise, and the error grows (tried).
 *
 * Weights are divided by the deviation of their sample, so that a covariance is one sum of products, and all four
 * pairs of line and parabola of two widths are summed in one walk.
 *
 * Source: Goldenshluger and Lepski, Annals of Statistics 39 (2011) 1608 (from memory); constants tuned on
 *         generated drives (tests/bench/power-accuracy.bench.ts).
 */
export function chooseSmoothers(samples: Samples): readonly Smoother[] {
  const widths = halfWidths(samples.time, 'fine');
  return sharesOf(widths, risksOf(samples, widths, efforts.fine.lattice));
}

/** Shares in the mean by risk, of line and parabola of each width in turn. */
export function sharesOf(widths: readonly number[], risks: readonly number[]): readonly Smoother[] {
  const least = Math.min(...risks);
  const worths = risks.map((r) => {
    const worth = least > 0 ? Math.exp(-(r - least) / (0.3 * least)) : Number(r === least);
    // What is worth less than a fiftieth costs time and changes nothing.
    return worth > 0.02 ? worth : 0;
  });
  const total = worths.reduce((a, b) => a + b, 0);
  return widths
    .map((halfWidth, i) => ({
      halfWidth,
      line: (worths[2 * i] as number) / total,
      parabola: (worths[2 * i + 1] as number) / total,
    }))
    .filter((s) => s.line + s.parabola > 0);
}

/** Half widths that are tried [s], from what four instants need to half the signal. */
export function halfWidths(time: Float64Array, effort: Effort): number[] {
  const { growth } = efforts[effort];
  let instants = 1;
  for (let i = 1; i < time.length; i++) if (time[i] !== time[i - 1]) instants++;
  const span = (time.at(-1) as number) - (time[0] as number);
  const widths: number[] = [];
  const least = Math.max(narrowestHalfWidth, (2.2 * span) / (instants - 1));
  for (let h = least; h < Math.max(least * 1.01, Math.min(2.6, span / 1.6)); h *= growth) widths.push(h);
  return widths;
}

/** Risk of line and parabola of each width in turn. */
function risksOf(samples: Samples, widths: readonly number[], lattice: number): number[] {
  const { time } = samples;
  const n = time.length;
  const count = 2 * widths.length;
  const first = time[0] as number;
  const span = (time.at(-1) as number) - first;
  const deviation = samples.weight.map((w) => 1 / Math.sqrt(w));
  if (scratch.length < count * n) scratch = new Float64Array(count * n);
  const slopes = new Float64Array(count * lattice);
  const shared = new Float64Array(count * count);
  const from = new Int32Array(widths.length);
  const to = new Int32Array(widths.length);
  for (let i = 0; i < lattice; i++) {
    const at = first + (span * (i + 0.5)) / lattice;
    widths.forEach((width, a) => {
      const window = windowAround(time, at, width, 4);
      from[a] = window.from;
      to[a] = window.to;
      slopesAt(samples, deviation, at, window, 2 * a, slopes, i * count);
    });
    for (let a = 0; a < widths.length; a++)
      for (let b = a; b < widths.length; b++) {
        const start = Math.max(from[a] as number, from[b] as number);
        addShared(shared, count, n, a, b, start, Math.min(to[a] as number, to[b] as number));
      }
  }
  return risksFrom(slopes, shared, count, lattice);
}

/**
 * Risks from slopes and covariances.
 *
 * @param slopes  of each smoother at each lattice point, point by point
 * @param shared  covariances of every two, summed over the lattice, upper half
 */
export function risksFrom(
  slopes: Float64Array,
  shared: Float64Array,
  count: number,
  lattice: number,
): number[] {
  return Array.from({ length: count }, (_, k) => {
    const own = shared[k * count + k] as number;
    let bias = 0;
    for (let j = 0; j < count; j++) {
      // A hundred times noisier shows no bias that one ten times noisier doesn't.
      const other = shared[j * count + j] as number;
      const louder = other / own;
      if (!(louder > 1 && louder < 100)) continue;
      const both = shared[Math.min(j, k) * count + Math.max(j, k)] as number;
      let excess = -2 * (other + own - 2 * both);
      for (let i = 0; i < lattice; i++) {
        const difference = (slopes[i * count + j] as number) - (slopes[i * count + k] as number);
        excess += difference * difference;
      }
      bias = Math.max(bias, excess / lattice);
    }
    return bias + (2 * own) / lattice;
  });
}

/** Slopes of line and parabola in one window, into `slopes`; their weights times deviation, into the scratch. */
function slopesAt(
  samples: Samples,
  deviation: Float64Array,
  at: number,
  { from, to, h }: { readonly from: number; readonly to: number; readonly h: number },
  row: number,
  slopes: Float64Array,
  place: number,
): void {
  const { time, value, weight } = samples;
  const n = time.length;
  const kernels = row * n;
  const offsets = kernels + n;
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  for (let i = from; i < to; i++) {
    const u = ((time[i] as number) - at) / h;
    const p = (weight[i] as number) * tricube(u);
    scratch[kernels + i] = p;
    scratch[offsets + i] = u;
    const p2 = p * u * u;
    s0 += p;
    s1 += p * u;
    s2 += p2;
    s3 += p2 * u;
    s4 += p2 * u * u;
  }
  const line = lineRows(s0, s1, s2);
  const [l0, l1] = line.slope;
  const [q0, q1, q2] = (parabolaRows(s0, s1, s2, s3, s4) ?? line).slope;
  let straight = 0;
  let bent = 0;
  for (let i = from; i < to; i++) {
    const u = scratch[offsets + i] as number;
    const p = (scratch[kernels + i] as number) / h;
    const a = p * (l0 + l1 * u);
    const b = p * (q0 + u * (q1 + u * q2));
    straight += a * (value[i] as number);
    bent += b * (value[i] as number);
    scratch[kernels + i] = a * (deviation[i] as number);
    scratch[offsets + i] = b * (deviation[i] as number);
  }
  slopes[place + row] = straight;
  slopes[place + row + 1] = bent;
}

/** Adds the covariances of line and parabola of width a with those of width b under the samples' own noise. */
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
