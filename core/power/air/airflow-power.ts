import { channelOf, type Log, median, type Pull } from '../../log/index.ts';
import { fail, type Note, ok, type Result } from '../../result/index.ts';
import { type FormulaCard, input } from '../explain.ts';
import { numbersWithin } from '../numbers-within.ts';
import type { PullPower } from '../pull-power.ts';

export type AirflowPower = {
  readonly engineSpeed_rad_s: Float64Array;
  /** Engine power that the air stands for at middle, highest and lowest usual consumption [W]. */
  readonly enginePower: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** enginePower here over that of the pull without its correction, mean over the pull. */
  readonly ratio: number;
  /** True where the ratio lies within the usual spread. */
  readonly agrees: boolean;
  readonly notes: readonly Note[];
};

/** Brake-specific fuel consumption at full load, boosted petrol: 0.30 to 0.36 kg/kWh (common practice). [kg/J] */
const consumption = { low: 0.3 / 3.6e6, middle: 0.33 / 3.6e6, high: 0.36 / 3.6e6 };
/** Air meters are rarely better than 6 % behind changed pipes, power from the road than 5 % (common practice). */
const usualRatio = [0.83, 1.2] as const;

/**
 * Engine power from the air it breathes: a cross-check that shares no input with the road but the clock.
 *
 *   P = air / (lambda L0) / b
 *
 * @param power    of the same pull; the air breathed is the day's, so its correction to reference air is taken off
 * @param options  stoichiometric air per fuel by mass, 14.4 for pump petrol with a little alcohol
 * @returns        over the engine speeds of `power`; lambda as logged, else 0.83
 *
 * Valid:  full load, boosted petrol engine. b moves with mixture and spark, so the level is good to some 10 %; a
 *         ratio outside 0.83 to 1.20 says that mass, gearing or the air meter is wrong, not which. Where the meter stands
 *         at its end nothing is compared, and a note says so.
 * Errors: power/no-air-flow.
 * Source: definition of b; its range is common practice.
 * Check:  0.2 kg/s, lambda 0.83, 14.4, 0.33 kg/kWh: 182.6 kW.
 */
export function airflowPowerEstimate(
  log: Log,
  pull: Pull,
  power: PullPower,
  options: { readonly stoichiometricAir?: number } = {},
): Result<AirflowPower> {
  const air = channelOf(log, 'airMassFlow');
  if (!air) return fail({ code: 'power/no-air-flow', facts: {} });
  const lambda = channelOf(log, 'lambda') ?? channelOf(log, 'lambdaTarget');
  const logged = lambda ? median(numbersWithin(lambda.values, pull.from, pull.to)) : Number.NaN;
  // Outside this a full-load mixture is not believable: a gauge at its end, a cold sensor.
  const mixture = logged > 0.65 && logged < 1.1 ? logged : 0.83;
  const fuelPerAir = 1 / (mixture * (options.stoichiometricAir ?? 14.4));
  const flow = flowsAlong(log.time, air.values, pull, power.time);
  const end = meterEnd(log.time, air.values, pull, power);
  // What a meter at its end does not see is not held against the pull.
  const isPastEnd = (t: number) => end !== null && t >= end.from_s && t <= end.to_s;
  for (let i = 0; i < flow.length; i++) if (isPastEnd(power.time[i] as number)) flow[i] = Number.NaN;
  const at = (b: number) => {
    const made = new Float64Array(flow.length);
    for (let i = 0; i < made.length; i++) made[i] = ((flow[i] as number) * fuelPerAir) / b;
    return made;
  };
  const enginePower = at(consumption.middle);
  let sum = 0;
  let count = 0;
  let ofAir = 0;
  let ofPull = 0;
  for (let i = 0; i < enginePower.length; i++) {
    const p = enginePower[i] as number;
    if (!Number.isFinite(p)) continue;
    const made = (power.enginePower[i] as number) / power.correction.factor;
    sum += p / made;
    ofAir += p;
    ofPull += made;
    count++;
  }
  if (count === 0) return fail({ code: 'power/no-air-flow', facts: {} });
  const ratio = sum / count;
  const means = { air: ofAir / count, power: ofPull / count };
  const [from, to] = usualRatio;
  const agrees = ratio >= from && ratio <= to;
  return ok({
    engineSpeed_rad_s: power.engineSpeed_rad_s,
    enginePower,
    low: at(consumption.high),
    high: at(consumption.low),
    ratio,
    agrees,
    notes: [
      ...(end
        ? [
            {
              code: 'power/airflow-at-end',
              facts: { flow: end.flow, engineSpeed_rad_s: end.engineSpeed_rad_s },
            } as const,
          ]
        : []),
      agrees
        ? { code: 'power/airflow-agrees', facts: { ratio, ...means } }
        : { code: 'power/airflow-disagrees', facts: { ratio, from, to, ...means } },
    ],
  });
}

/**
 * A meter that stands at its end does so over this much of engine speed: at peak power air moves by a percent within it
 * (worked out for torque that falls by a quarter over the last quarter of engine speed).
 */
const leastRise = 0.15;
/** Below the end by this the pull has shown that the meter moves. */
const moved = 0.9;

/**
 * Where the highest reading of the pull stays one and the same number while engine speed goes on rising: the meter, or
 * what reads it, is at the end of its range.
 */
function meterEnd(time: Float64Array, values: Float64Array, pull: Pull, power: PullPower) {
  const readings = numbersWithin(values, pull.from, pull.to);
  const flow = readings.reduce((a, b) => Math.max(a, b), 0);
  if (!readings.some((x) => x < moved * flow)) return null;
  const speedAt = (t: number) => {
    const next = power.time.findIndex((x) => x >= t);
    return power.engineSpeed_rad_s.at(next < 0 ? -1 : next) as number;
  };
  for (let from = pull.from; from < pull.to; from++) {
    if (values[from] !== flow) continue;
    let to = from;
    while (to + 1 < pull.to && (values[to + 1] === flow || Number.isNaN(values[to + 1]))) to++;
    const [from_s, to_s] = [time[from] as number, time[to] as number];
    const engineSpeed_rad_s = speedAt(from_s);
    if (speedAt(to_s) > (1 + leastRise) * engineSpeed_rad_s) return { flow, from_s, to_s, engineSpeed_rad_s };
    from = to;
  }
  return null;
}

/** Readings so near to an instant tell of it [s]. */
const around = 0.25;

/** Mean of the readings around each instant, inside the pull; where there is none, the nearest. */
function flowsAlong(time: Float64Array, values: Float64Array, pull: Pull, instants: Float64Array) {
  const flows = new Float64Array(instants.length);
  let from = pull.from;
  for (let k = 0; k < flows.length; k++) {
    const t = instants[k] as number;
    // Instants rise but for ripples: the first reading around one is near that around the one before.
    while (from > pull.from && t - (time[from - 1] as number) <= around) from--;
    while (from < pull.to && t - (time[from] as number) > around) from++;
    let sum = 0;
    let count = 0;
    for (let i = from; i < pull.to && (time[i] as number) - t <= around; i++) {
      const value = values[i] as number;
      if (!Number.isFinite(value)) continue;
      sum += value;
      count++;
    }
    flows[k] = count > 0 ? sum / count : nearestTo(t, time, values, pull);
  }
  return flows;
}

function nearestTo(t: number, time: Float64Array, values: Float64Array, pull: Pull): number {
  let nearest = Number.NaN;
  let closest = Number.POSITIVE_INFINITY;
  for (let i = pull.from; i < pull.to; i++) {
    const off = Math.abs((time[i] as number) - t);
    if (!(Number.isFinite(values[i]) && off < closest)) continue;
    closest = off;
    nearest = values[i] as number;
  }
  return nearest;
}

export const explainAirflowPower: FormulaCard = {
  formula: 'P = air / (lambda L0) / b',
  inputs: [
    input('air', 'kg/s', 'air mass flow'),
    input('lambda', '1', 'measured mixture'),
    input('L0', '1', 'stoichiometric air per fuel by mass'),
    input('b', 'kg/J', 'brake-specific fuel consumption'),
  ],
  source: 'definition; 0.30 to 0.36 kg/kWh at full load is common practice',
  validRange: 'full load, boosted petrol; level good to some 10 %',
};
