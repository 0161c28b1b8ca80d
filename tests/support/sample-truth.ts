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
  readonly isLifted?: boolean;
};
type Curve = readonly (number | null)[];
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

/** Mean of a true curve [kW] over a band [rpm], linear between the grid's points. */
export function bandMeanOf(curve: Curve, from_rpm: number, to_rpm: number): number {
  const at = (rpm: number) => {
    const i = Math.min(
      Math.max(
        truth.grid_rpm.findIndex((n) => n >= rpm),
        1,
      ),
      truth.grid_rpm.length - 1,
    );
    const [n0 = 0, n1 = 1] = [truth.grid_rpm[i - 1], truth.grid_rpm[i]];
    const [y0, y1] = [curve[i - 1], curve[i]];
    if (y0 === null || y1 === null || y0 === undefined || y1 === undefined)
      throw new Error(`no truth at ${rpm} rpm`);
    return y0 + ((y1 - y0) * (rpm - n0)) / (n1 - n0);
  };
  const steps = 200;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    sum += at(from_rpm + ((to_rpm - from_rpm) * i) / steps) * (i === 0 || i === steps ? 0.5 : 1);
  }
  return sum / steps;
}
