import type { Channel, Log, Pull, QuantityId } from '../../core/log/index.ts';
import { type Car, CarSchema, type Conditions, ConditionsSchema } from '../../core/power/index.ts';
import { normal, seeded } from './random.ts';

const rpm = Math.PI / 30;
const gravity = 9.80665;

/** A sensor as it writes: noise, then hold, then steps. */
export type Sensor = {
  /** Standard deviation, in the channel's SI unit. */
  readonly noise: number;
  /** Step of the written number, SI; 0 for none. */
  readonly step: number;
  /** Seconds between two readings; the file repeats the last one in between. 0 for every row. */
  readonly hold?: number;
  /** Seconds from the first row to the second reading, where that is no whole hold. */
  readonly phase?: number;
  /** Seconds by which the reading comes late. */
  readonly lag?: number;
  /** Time constant of a first-order filter before it is read [s]; vehicle speed only. */
  readonly smoothed?: number;
  /** The logger draws a straight line from one reading to the next in place of repeating it. */
  readonly isDrawn?: boolean;
};

/** All that the car, the road and the logger are in truth. */
export type Drive = {
  readonly mass: number;
  readonly wheelInertia: number;
  readonly engineInertia: number;
  readonly gearRatio: number;
  readonly finalDrive: number;
  readonly radius: number;
  readonly dragArea: number;
  readonly rolling: number;
  readonly airDensity: number;
  readonly grade: number;
  /** Slip at the largest tractive force; it grows in proportion to the force. */
  readonly slip: number;
  /** Slip over its largest, as a function of force over its largest; in proportion unless told otherwise. */
  readonly slipLaw: (share: number) => number;
  /** Wheel power [W] over engine speed [rad/s] and time since full throttle [s]. */
  readonly wheelPower: (engineSpeed_rad_s: number, sincePullStart: number) => number;
  readonly rpmFrom: number;
  readonly rpmTo: number;
  /** Rows per second. */
  readonly rate: number;
  /** Share of the row interval by which row times scatter. */
  readonly jitter: number;
  readonly engineSpeed: Sensor | null;
  readonly vehicleSpeed: Sensor | null;
  readonly altitude: Sensor | null;
  readonly seed: number;
};

export type Driven = {
  readonly log: Log;
  readonly pull: Pull;
  readonly car: Car;
  readonly conditions: Conditions;
  readonly truth: Truth;
};
/** At every millisecond of the pull. */
export type Truth = {
  readonly engineSpeed: Float64Array;
  readonly wheelPower: Float64Array;
  readonly time: Float64Array;
  readonly speed: Float64Array;
};

/** A boosted engine: torque climbs steeply where boost comes in, stays flat, then falls. */
export function boostedCurve(
  peakTorque: number,
  spoolAt_rpm: number,
  spoolWidth_rpm: number,
  fallFrom_rpm: number,
  fallShare = 0.25,
): (w: number) => number {
  return (w) => {
    const n = w / rpm;
    const rise = 0.45 + 0.55 / (1 + Math.exp(-(n - spoolAt_rpm) / spoolWidth_rpm));
    const fall = n > fallFrom_rpm ? 1 - fallShare * ((n - fallFrom_rpm) / 2000) ** 2 : 1;
    return peakTorque * rise * fall * w;
  };
}

export const usualDrive: Drive = {
  mass: 1420,
  wheelInertia: 0,
  engineInertia: 0,
  gearRatio: 1.36,
  finalDrive: 3.9,
  radius: 0.308,
  dragArea: 0.66,
  rolling: 0.012,
  airDensity: 1.2041,
  grade: 0,
  slip: 0,
  slipLaw: (share) => share,
  wheelPower: boostedCurve(290, 2900, 180, 5200),
  rpmFrom: 2500,
  rpmTo: 6500,
  rate: 20,
  jitter: 0,
  engineSpeed: { noise: 8 * rpm, step: rpm },
  vehicleSpeed: { noise: 0.08 / 3.6, step: 0.1 / 3.6 },
  altitude: null,
  seed: 1,
};

/**
 * Drives the car through one pull by forward integration (fixed step of 1 ms, midpoint rule) and writes what the
 * logger would have seen: 1.5 s of part throttle before, 1 s of lift after.
 *
 *   (m + Iw / r^2) dv/dt = Pw / v - m g (Crr cos + sin) - rho CdA v^2 / 2
 *
 * The truth that comes along is the wheel power that went in, at each engine speed (slip included).
 */
export function drive(given: Partial<Drive> = {}): Driven {
  const d: Drive = { ...usualDrive, ...given };
  const uniform = seeded(d.seed);
  const gauss = normal(uniform);
  const overall = (d.gearRatio * d.finalDrive) / d.radius;
  const inertia = d.mass + d.wheelInertia / d.radius ** 2;
  const angle = Math.atan(d.grade);
  const load = (v: number) =>
    d.mass * gravity * (d.rolling * Math.cos(angle) + Math.sin(angle)) +
    0.5 * d.airDensity * d.dragArea * v * v;
  const peakForce = peakOf(d, overall);
  const slipOf = (force: number) => d.slip * d.slipLaw(Math.max(0, force / peakForce));
  const step = 1e-3;
  const lead = 1.5;
  let slip = d.slip / 2;
  const force = (v: number, since: number, throttle: number) => {
    // Slip and force depend on each other: two rounds settle it, since slip is small.
    let f = 0;
    for (let i = 0; i < 3; i++) {
      f = (throttle * d.wheelPower(v * overall * (1 + slip), since)) / v;
      slip = slipOf(f);
    }
    return f;
  };
  // Start so that full throttle begins near rpmFrom: go back by the cruise's own acceleration.
  const start = (d.rpmFrom * rpm) / overall;
  const cruise = 0.3;
  let v = start - cruise * lead;
  let altitude = 100;
  const rows = {
    t: [] as number[],
    w: [] as number[],
    v: [] as number[],
    h: [] as number[],
    pedal: [] as number[],
  };
  const truth = { w: [] as number[], p: [] as number[], t: [] as number[], v: [] as number[] };
  let t = 0;
  const history: number[] = [];
  const filter = d.vehicleSpeed?.smoothed ? 1 - Math.exp(-step / d.vehicleSpeed.smoothed) : 1;
  let filtered = v - cruise * (d.vehicleSpeed?.smoothed ?? 0);
  const behind = Math.round((d.vehicleSpeed?.lag ?? 0) / step);
  let nextRow = uniform() / d.rate;
  let rowTime = nextRow;
  let pullStart = Number.NaN;
  let pullEnd = Number.NaN;
  for (; t < 60; t += step) {
    const inPull = t >= lead && Number.isNaN(pullEnd);
    if (inPull && Number.isNaN(pullStart)) pullStart = t;
    let a: number;
    let power = 0;
    if (t < lead) {
      slip = slipOf(cruise * d.mass + load(v));
      a = cruise;
    } else if (inPull) {
      const since = t - pullStart;
      const half = v + (step / 2) * ((force(v, since, 1) - load(v)) / inertia);
      a = (force(half, since + step / 2, 1) - load(half)) / inertia;
      power = force(v, since, 1) * v;
    } else {
      slip = 0;
      a = -1.2;
    }
    const w = v * overall * (1 + slip);
    if (inPull) {
      truth.w.push(w);
      truth.p.push(power);
      truth.t.push(t);
      truth.v.push(v);
      if (w >= d.rpmTo * rpm) pullEnd = t;
    }
    filtered += filter * (v - filtered);
    history.push(filtered);
    if (t >= rowTime) {
      rows.t.push(t);
      rows.w.push(w);
      rows.v.push(history[history.length - 1 - behind] ?? v);
      rows.h.push(altitude);
      rows.pedal.push(t < lead ? 0.3 : inPull ? 1 : 0);
      nextRow += 1 / d.rate;
      rowTime = nextRow + (d.jitter * (uniform() - 0.5)) / d.rate;
    }
    if (!Number.isNaN(pullEnd) && t > pullEnd + 1) break;
    altitude += v * Math.sin(angle) * step;
    v += a * step;
  }
  const time = Float64Array.from(rows.t, (x) => Math.round(x * 1000) / 1000);
  const channels: Channel[] = [channelFrom('Pedal', 'pedal', '1', Float64Array.from(rows.pedal))];
  if (d.engineSpeed)
    channels.push(
      channelFrom('Engine speed', 'engineSpeed', 'rpm', sense(rows.w, time, d.engineSpeed, gauss)),
    );
  if (d.vehicleSpeed)
    channels.push(channelFrom('Speed', 'vehicleSpeed', 'km/h', sense(rows.v, time, d.vehicleSpeed, gauss)));
  if (d.altitude)
    channels.push(channelFrom('Altitude', 'altitude', 'm', sense(rows.h, time, d.altitude, gauss)));
  const from = rows.pedal.indexOf(1);
  const to = rows.pedal.lastIndexOf(1) + 1;
  return {
    log: logOf(time, channels),
    pull: pullOf(time, from, to, d.rpmFrom, d.rpmTo),
    car: CarSchema.parse({
      mass_kg: d.mass,
      gearRatios: [d.gearRatio * 2.4, d.gearRatio * 1.5, d.gearRatio, d.gearRatio * 0.75],
      finalDrive: d.finalDrive,
      rollingRadius_m: d.radius,
      pullGear: 3,
      wheelInertia_kg_m2: d.wheelInertia,
      engineInertia_kg_m2: d.engineInertia,
      dragArea_m2: d.dragArea,
      rollingCoefficient: d.rolling,
      drivetrainEfficiency: 0.88,
      tyreSlip: d.slip,
    }),
    conditions: ConditionsSchema.parse({
      place: 'road',
      ambient_C: 20,
      barometer_kPa: 101.325,
      relativeHumidity_percent: 0,
      grade_percent: d.grade * 100,
    }),
    truth: {
      engineSpeed: Float64Array.from(truth.w),
      wheelPower: Float64Array.from(truth.p),
      time: Float64Array.from(truth.t),
      speed: Float64Array.from(truth.v),
    },
  };
}

/** Root mean square, worst and mean of (found - true) / true over the points found. */
export function errorAgainst(
  truth: Truth,
  found: { readonly engineSpeed_rad_s: Float64Array; readonly wheelPower: Float64Array },
): { readonly rms: number; readonly worst: number; readonly mean: number; readonly points: number } {
  let squares = 0;
  let sum = 0;
  let worst = 0;
  const n = found.engineSpeed_rad_s.length;
  for (let i = 0; i < n; i++) {
    const real = interpolate(truth.engineSpeed, truth.wheelPower, found.engineSpeed_rad_s[i] as number);
    const off = (found.wheelPower[i] as number) / real - 1;
    squares += off * off;
    sum += off;
    worst = Math.max(worst, Math.abs(off));
  }
  return { rms: Math.sqrt(squares / n), worst, mean: sum / n, points: n };
}

/** Share of the points found at which the truth lies within 1.96 standard errors. */
export function heldShare(
  truth: Truth,
  found: {
    readonly engineSpeed_rad_s: Float64Array;
    readonly wheelPower: Float64Array;
    readonly wheelPowerError: Float64Array;
  },
): number {
  let held = 0;
  for (const [i, speed] of found.engineSpeed_rad_s.entries()) {
    const off = (found.wheelPower[i] as number) - interpolate(truth.engineSpeed, truth.wheelPower, speed);
    if (Math.abs(off) < 1.96 * (found.wheelPowerError[i] as number)) held++;
  }
  return held / found.engineSpeed_rad_s.length;
}

/** y at x, xs rising. */
export function interpolate(xs: Float64Array, ys: Float64Array, x: number): number {
  let low = 0;
  let high = xs.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((xs[middle] as number) <= x) low = middle;
    else high = middle;
  }
  const x0 = xs[low] as number;
  const x1 = xs[high] as number;
  const share = x1 === x0 ? 0 : Math.min(1, Math.max(0, (x - x0) / (x1 - x0)));
  return (ys[low] as number) * (1 - share) + (ys[high] as number) * share;
}

export function logOf(time: Float64Array, channels: readonly Channel[]): Log {
  return {
    file: 'generated.csv',
    time,
    channels,
    segments: [{ from: 0, to: time.length }],
    warnings: [],
    style: {
      encoding: 'utf-8',
      delimiter: ',',
      decimal: '.',
      headerLine: 1,
      firstDataLine: 2,
      timeFormat: 's',
    },
  };
}

export function channelFrom(
  column: string,
  quantity: QuantityId,
  unit: string,
  values: Float64Array,
): Channel {
  return {
    column,
    quantity,
    unit,
    confidence: 1,
    reason: null,
    values,
    flags: new Uint8Array(values.length),
  };
}

export function pullOf(time: Float64Array, from: number, to: number, rpmFrom: number, rpmTo: number): Pull {
  return {
    from,
    to,
    start_s: time[from] as number,
    end_s: time[to - 1] as number,
    gear: 3,
    rpmFrom,
    rpmTo,
    complete: true,
    flags: [],
  };
}

function sense(
  real: readonly number[],
  time: Float64Array,
  sensor: Sensor,
  gauss: () => number,
): Float64Array {
  const out = new Float64Array(real.length);
  let next = Number.NEGATIVE_INFINITY;
  let shown = 0;
  let read = 0;
  for (let i = 0; i < real.length; i++) {
    const t = time[i] as number;
    if (t >= next - 1e-9) {
      const value = (real[i] as number) + sensor.noise * gauss();
      const before = shown;
      shown = sensor.step > 0 ? Math.round(value / sensor.step) * sensor.step : value;
      if (sensor.isDrawn)
        for (let k = read + 1; k < i; k++) {
          const share = ((time[k] as number) - (time[read] as number)) / (t - (time[read] as number));
          out[k] = Math.round((before + share * (shown - before)) * drawnDigits) / drawnDigits;
        }
      const wait = Number.isFinite(next) ? (sensor.hold ?? 0) : (sensor.phase ?? sensor.hold ?? 0);
      next = (Number.isFinite(next) ? next : t) + wait;
      if (next < t) next = t;
      read = i;
    }
    out[i] = shown;
  }
  return out;
}

/** A drawn line is written to 0.001 of its SI unit. */
const drawnDigits = 1000;

function peakOf(d: Drive, overall: number): number {
  let peak = 0;
  for (let n = d.rpmFrom; n <= d.rpmTo; n += 50)
    peak = Math.max(peak, d.wheelPower(n * rpm, 99) / ((n * rpm) / overall));
  return peak;
}
