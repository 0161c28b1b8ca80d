/**
 * Where a rising function crosses `target`, to the last digit: bounds are widened until they hold it, then
 * narrowed by inverse interpolation that falls back on halving.
 *
 * Source: Brent, Algorithms for Minimization without Derivatives (1973), chapter 4.
 */
export function crossing(
  rising: (x: number) => number,
  target: number,
  bounds: { readonly low: number; readonly high: number },
): number {
  let { low, high } = bounds;
  for (let k = 0; k < 1100 && rising(high) < target; k++) high = high > 0 ? high * 2 : high / 2 + 1;
  for (let k = 0; k < 1100 && rising(low) > target; k++) low = low < 0 ? low * 2 : low / 2 - 1;
  return brent((x) => rising(x) - target, low, high);
}

function brent(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  let [c, fc] = [a, fa];
  let step = b - a;
  let last = step;
  for (let k = 0; k < 300; k++) {
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      last = step = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + 1e-300;
    const half = (c - b) / 2;
    if (Math.abs(half) <= tolerance || fb === 0) return b;
    if (Math.abs(last) < tolerance || Math.abs(fa) <= Math.abs(fb)) {
      last = step = half;
    } else {
      const s = fb / fa;
      let p = 2 * half * s;
      let q = 1 - s;
      if (a !== c) {
        const u = fa / fc;
        const r = fb / fc;
        p = s * (2 * half * u * (u - r) - (b - a) * (r - 1));
        q = (u - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      const isGood = 2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(last * q));
      last = isGood ? step : half;
      step = isGood ? p / q : half;
    }
    [a, fa] = [b, fb];
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
  }
  return b;
}
