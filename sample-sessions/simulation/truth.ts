import { spray } from './hatch.ts';
import type { Trace, TraceField } from './trace.ts';

/** Engine speeds at which the true curves are written down [rpm]. */
export const grid_rpm = Array.from({ length: 40 }, (_, i) => 2500 + 100 * i);
/** Where the true effects are averaged [rpm]: boost stands, lift is not yet near. */
export const band_rpm = [3500, 6300] as const;

export const round = (value: number, decimals: number) => Number(value.toFixed(decimals));

/** A field of one pull over engine speed, at the first passage of each grid point; null outside the pull. */
export function curveOf(trace: Trace, pullIndex: number, field: TraceField): (number | null)[] {
  const pull = trace.pulls[pullIndex];
  if (!pull) throw new Error('no such pull');
  const speed = trace.fields.engineSpeed_rpm;
  const values = trace.fields[field];
  let i = pull.from;
  return grid_rpm.map((rpm) => {
    while (i < pull.to && (speed[i] ?? 0) < rpm) i++;
    if (i >= pull.to || i === pull.from) return null;
    const [n0 = 0, n1 = 0, y0 = 0, y1 = 0] = [speed[i - 1], speed[i], values[i - 1], values[i]];
    return y0 + ((y1 - y0) * (rpm - n0)) / (n1 - n0);
  });
}

/** Pointwise mean of curves; null where one of them is missing. */
export function meanCurve(curves: readonly (readonly (number | null)[])[]): (number | null)[] {
  return grid_rpm.map((_, i) => {
    const values = curves.map((c) => c[i] ?? null);
    return values.some((v) => v === null)
      ? null
      : values.reduce<number>((a, v) => a + (v ?? 0), 0) / values.length;
  });
}

/** Mean of a curve over the band's engine speeds, by trapezoids. */
export function bandMean(curve: readonly (number | null)[]): number {
  let [sum, weights] = [0, 0];
  grid_rpm.forEach((rpm, i) => {
    const value = curve[i];
    if (rpm < band_rpm[0] || rpm > band_rpm[1]) return;
    if (value === null || value === undefined) throw new Error('the band reaches beyond the pull');
    const weight = rpm === band_rpm[0] || rpm === band_rpm[1] ? 0.5 : 1;
    sum += weight * value;
    weights += weight;
  });
  return sum / weights;
}

/** What a pull used up: fluid [mL], and fluid over fuel by mass while the spray was full. */
export function consumption(trace: Trace, pullIndex: number): { fluid_mL: number; fluidOverFuel: number } {
  const pull = trace.pulls[pullIndex];
  if (!pull) throw new Error('no such pull');
  const { fluidFlow, fuelFlow, manifoldPressure } = trace.fields;
  let [fluid, fluidFull, fuelFull] = [0, 0, 0];
  for (let i = pull.from; i < pull.to; i++) {
    const flow = fluidFlow[i] ?? 0;
    fluid += flow * 1e-3;
    if ((manifoldPressure[i] ?? 0) < 195e3) continue;
    fluidFull += flow * spray.density;
    fuelFull += fuelFlow[i] ?? 0;
  }
  return { fluid_mL: fluid * 1e6, fluidOverFuel: fluidFull / fuelFull };
}
