import { readFileSync } from 'node:fs';

export const sampleFolder = new URL('../../sample-sessions/', import.meta.url);

export type TruePull = {
  readonly start_s: number;
  readonly end_s: number;
  readonly gear: number;
  readonly rpmFrom: number;
  readonly rpmTo: number;
  readonly fluid_mL: number;
  readonly fluidOverFuel: number;
  readonly headwind_m_s: number;
  readonly wheelPower_kW: Curve;
  readonly isLifted?: boolean;
};
export type Curve = readonly (number | null)[];
type TrueEffect = {
  readonly effect_kW: number;
  readonly effect_percent: number;
  readonly delta_kW: Curve;
};

export type TrueEntry = {
  readonly id: string;
  readonly kind: string;
  readonly files: readonly { readonly file: string; readonly pulls: readonly TruePull[] }[];
  readonly wheelPower_kW: Curve;
  readonly enginePower_kW: Curve;
  readonly nominalWheelPower_kW: Curve;
  readonly bandMean_kW: number;
  readonly against?: string;
  readonly declared?: TrueEffect;
  readonly total?: TrueEffect;
  readonly isConfounded?: boolean;
  readonly expectedVerdicts?: readonly string[];
};

/** truth.json of the sample sessions, as its generator wrote it. */
export type Truth = {
  readonly grid_rpm: readonly number[];
  readonly band_rpm: readonly [number, number];
  readonly entries: readonly TrueEntry[];
  readonly looseLogs: readonly {
    readonly file: string;
    readonly pulls: readonly TruePull[];
    readonly wheelPower_kW: Curve;
    readonly nominalWheelPower_kW: Curve;
  }[];
};

export const truth = JSON.parse(readFileSync(new URL('truth.json', sampleFolder), 'utf8')) as Truth;

/** A true curve [kW] at an engine speed, linear between the grid's points; null where there is no truth. */
export function trueAt(curve: Curve, rpm: number): number | null {
  const { grid_rpm } = truth;
  const next = grid_rpm.findIndex((n) => n >= rpm);
  if (next < 0) return null;
  const y1 = curve[next] ?? null;
  if (grid_rpm[next] === rpm || next === 0) return grid_rpm[next] === rpm ? y1 : null;
  const [n0 = 0, n1 = 0, y0 = null] = [grid_rpm[next - 1], grid_rpm[next], curve[next - 1]];
  return y0 === null || y1 === null ? null : y0 + ((y1 - y0) * (rpm - n0)) / (n1 - n0);
}

/** Mean of a true curve [kW] over the part of a band [rpm] where there is truth. */
export function bandMeanOf(curve: Curve, from_rpm: number, to_rpm: number): number {
  const steps = 400;
  let [sum, weights] = [0, 0];
  for (let i = 0; i <= steps; i++) {
    const value = trueAt(curve, from_rpm + ((to_rpm - from_rpm) * i) / steps);
    if (value === null) continue;
    const weight = i === 0 || i === steps ? 0.5 : 1;
    sum += weight * value;
    weights += weight;
  }
  if (weights < 0.9 * steps) throw new Error(`no truth over most of ${from_rpm} to ${to_rpm} rpm`);
  return sum / weights;
}
