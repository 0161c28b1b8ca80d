/**
 * Volume of a length of line [m^3].  Check: 1 m of 4 mm bore holds 12.6 mL.
 */
export function lineVolume(bore: number, length: number): number {
  return (Math.PI / 4) * bore ** 2 * length;
}

/** Flow over boost, as the injection curve has it; boost rising [Pa gauge], flow [m^3/s]. */
export type FlowOverBoost = { readonly boost: readonly number[]; readonly flow: readonly number[] };

/** Straight line between points, held at both ends. */
export function flowAt(curve: FlowOverBoost, boost: number): number {
  const n = curve.boost.length;
  if (n === 0) return 0;
  if (boost <= (curve.boost[0] ?? 0)) return curve.flow[0] ?? 0;
  for (let i = 1; i < n; i++) {
    const [b0 = 0, b1 = 0] = [curve.boost[i - 1], curve.boost[i]];
    if (boost <= b1) {
      const [q0 = 0, q1 = 0] = [curve.flow[i - 1], curve.flow[i]];
      return b1 === b0 ? q1 : q0 + ((q1 - q0) * (boost - b0)) / (b1 - b0);
    }
  }
  return curve.flow[n - 1] ?? 0;
}

export type Arrival = {
  /** From the start point until fluid leaves the nozzle [s]. */
  readonly delay: number;
  /** Where boost has got to by then [Pa gauge]. */
  readonly boost: number;
};

/**
 * When fluid arrives after the start point, while boost climbs and an empty line fills.
 *
 *   integral of q(boost(t)) dt = V,   boost(t) = start + rise t, up to peak
 *
 * @param rise  of boost [Pa/s]
 * @returns     null where it does not arrive within 20 s: longer than any pull
 *
 * Valid:  an incompressible fluid and a rigid line; a soft hose adds some tenths of a second (common practice).
 * Check:  12.6 mL at a steady 200 mL/min takes 3.8 s.
 */
export function fluidArrival(of: {
  volume: number;
  curve: FlowOverBoost;
  start: number;
  peak: number;
  rise: number;
}): Arrival | null {
  if (of.volume <= 0) return { delay: 0, boost: of.start };
  const step = 0.01;
  let filled = 0;
  let before = flowAt(of.curve, of.start);
  for (let t = step; t <= 20; t += step) {
    const now = flowAt(of.curve, Math.min(of.peak, of.start + of.rise * t));
    const gained = ((before + now) / 2) * step;
    if (filled + gained >= of.volume) {
      const delay = t - step + (gained > 0 ? ((of.volume - filled) / gained) * step : 0);
      return { delay, boost: Math.min(of.peak, of.start + of.rise * delay) };
    }
    filled += gained;
    before = now;
  }
  return null;
}
