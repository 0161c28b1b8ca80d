import { type FootTravel, travelStep_s } from './foot-travel.ts';

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

/** Samples of one end, and the sums over all of them that no travel changes. */
export type FootSamples = {
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

/**
 * @param t    [s], rising
 * @param y    pressure [Pa gauge] or speed, one per time
 */
export function footSamples(t: readonly number[], y: readonly number[], fit: FootFit): FootSamples {
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
export function squaredError(samples: FootSamples, travel: FootTravel, first: number): number {
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
