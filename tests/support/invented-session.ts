import type { EntryPulls, PullEvidence } from '../../core/compare/index.ts';
import type { QuantityId } from '../../core/log/index.ts';
import { normal, seeded } from './random.ts';

/**
 * Sessions with known truth, made as evidence and not as logs, so that thousands can be judged in a minute. The
 * car, its day and its logger are invented. Nothing here knows how the judge works.
 */
export type Day = {
  readonly seed: number;
  /** Pulls of each entry, and the true effect of each entry on power against the baseline, as a share. */
  readonly entries: readonly InventedEntry[];
  /** Deviation of one pull's level, as a share. */
  readonly repeatability: number;
  /** Deviation of a pull's curve about its own level, as a share, with this correlation length [rad/s]. */
  readonly shape: number;
  readonly shapeLength: number;
  /** Change of power a pull, as a share: heat soak that no channel shows. */
  readonly driftPerPull: number;
  /** What the first pull lacks, as a share, while the car warms up: a third of the rest goes with every pull. */
  readonly warmUp: number;
  /** Deviation of the step by which the day wanders from pull to pull, as a share. */
  readonly wander: number;
  /** Rise of intake temperature a pull [K], its scatter [K], and what a kelvin costs. */
  readonly intakeRise: number;
  readonly intakeScatter: number;
  readonly intakeCost: number;
  /** Scatter of a pull's boost [Pa], and whether power follows it. */
  readonly boostScatter: number;
  readonly boostMatters: boolean;
  /** Noise of one reading of each channel, as a factor on what a good sensor has. */
  readonly sensorNoise: number;
};

export type InventedEntry = {
  readonly pulls: number;
  /** True level against the baseline as a share, alike at all engine speeds. */
  readonly share: number;
  readonly moved?: Partial<Record<'boost' | 'spark' | 'lambda' | 'fluid' | 'retard' | 'intake', number>>;
  readonly gear?: number;
  readonly repeats?: number;
  /** Share of the pulls' usual scatter. */
  readonly scatter?: number;
};

const rpm = Math.PI / 30;
const degree = Math.PI / 180;

export const quietDay: Day = {
  seed: 1,
  entries: [
    { pulls: 3, share: 0 },
    { pulls: 3, share: 0 },
  ],
  repeatability: 0.005,
  shape: 0.003,
  shapeLength: 400 * rpm,
  driftPerPull: 0,
  warmUp: 0,
  wander: 0,
  intakeRise: 0,
  intakeScatter: 0.7,
  intakeCost: 0.0015,
  boostScatter: 800,
  boostMatters: false,
  sensorNoise: 1,
};

/** The entries of a day as the judge is given them. */
export function inventDay(day: Day): EntryPulls[] {
  const uniform = seeded(day.seed);
  for (let i = 0; i < 20; i++) uniform();
  const gauss = normal(uniform);
  let order = 0;
  let wandered = 0;
  return day.entries.map((entry, e) => {
    const pulls: PullEvidence[] = [];
    for (let p = 0; p < entry.pulls; p++) {
      const unseen = day.driftPerPull * order + wandered - day.warmUp * (2 / 3) ** order;
      pulls.push(inventPull(day, entry, { entryId: `e${e}`, order, place: p, unseen }, uniform, gauss));
      order += 1;
      if (day.wander > 0) wandered += day.wander * gauss();
    }
    return { id: `e${e}`, repeats: entry.repeats === undefined ? null : `e${entry.repeats}`, pulls };
  });
}

function inventPull(
  day: Day,
  entry: InventedEntry,
  at: { entryId: string; order: number; place: number; unseen: number },
  uniform: () => number,
  gauss: () => number,
): PullEvidence {
  const from = 2450 + 250 * uniform();
  const to = 6250 + 250 * uniform();
  const points = 180;
  const speed = Float64Array.from(
    { length: points },
    (_, k) => (from + ((to - from) * k) / (points - 1)) * rpm,
  );
  const time = Float64Array.from({ length: points }, (_, k) => 3 + (8 * k) / (points - 1));
  const boostOffset = day.boostScatter * gauss();
  const intake = 308 + day.intakeRise * at.order + day.intakeScatter * gauss() + (entry.moved?.intake ?? 0);
  const level =
    Math.log1p(entry.share) +
    day.repeatability * (entry.scatter ?? 1) * gauss() +
    at.unseen -
    day.intakeCost * (intake - 308) +
    (day.boostMatters ? boostOffset / 200_000 : 0);
  const wander = smoothNoise(speed, day.shapeLength, gauss);
  const wheelPower = speed.map(
    (w, k) => truePower(w) * Math.exp(level) * (1 + day.shape * (wander[k] as number)),
  );
  const noise = day.sensorNoise;
  const flat = (value: number, sensor: number) => speed.map(() => value + noise * sensor * gauss());
  const moved = entry.moved ?? {};
  const curves: Partial<Record<QuantityId, Float64Array>> = {
    boost: speed.map((w) => (100_000 + (moved.boost ?? 0)) * rise(w) + boostOffset + noise * 700 * gauss()),
    sparkAdvance: speed.map((w) => {
      const planned = (10 + 8 * rise(w)) * degree;
      return planned + (moved.spark ?? 0) - (moved.retard ?? 0) + 0.1 * degree * gauss();
    }),
    lambda: flat(0.84 + (moved.lambda ?? 0) + 0.002 * gauss(), 0.008),
    fluidFlow: speed.map((w) => (3e-6 + (moved.fluid ?? 0)) * rise(w) + noise * 5e-8 * gauss()),
    intakeTemperature: flat(intake, 0.3),
    knockRetard: speed.map(() => (moved.retard ?? 0) + 0.05 * degree * Math.abs(gauss())),
    exhaustTemperature: flat(1100 + 5 * gauss(), 2),
  };
  const start: Partial<Record<QuantityId, number>> = { intakeTemperature: intake + noise * 0.3 * gauss() };
  return {
    id: `${at.entryId}-${at.place}`,
    entryId: at.entryId,
    order: at.order,
    gear: entry.gear ?? 3,
    power: {
      engineSpeed_rad_s: speed,
      wheelPower,
      enginePower: wheelPower,
      wheelPowerError: wheelPower.map((p) => 0.002 * p),
      systematicError: wheelPower.map((p) => 0.02 * p),
      time,
      bandwidth: 0.4,
      basis: 'engine-speed',
      correction: { standard: 'none', factor: 1 },
      notes: [],
    },
    curves,
    start,
    events: { knockEvents: null, knockRetard_rad: moved.retard ?? 0 },
    flags: [],
    isComplete: true,
    direction: null,
    conditions: null,
    mass_kg: 1400,
  };
}

/** 0 below spool, 1 above. */
function rise(w: number): number {
  return 1 / (1 + Math.exp(-(w / rpm - 3300) / 220));
}

/** Wheel power of the baseline [W]. */
export function truePower(w: number): number {
  const n = w / rpm;
  const torque = 150 + 190 * rise(w) - (n > 5200 ? 60 * ((n - 5200) / 1500) ** 2 : 0);
  return torque * w;
}

/**
 * Standard normal noise with a correlation length: a sum of waves with random phase. The points stand evenly, so
 * each wave is turned on from point to point instead of asked for its sine anew.
 */
function smoothNoise(at: Float64Array, length: number, gauss: () => number): Float64Array {
  const waves = 24;
  const out = new Float64Array(at.length);
  for (let j = 0; j < waves; j++) {
    const k = gauss() / length;
    const a = gauss();
    const b = gauss();
    const [first = 0, second = 0] = at;
    const turnCos = Math.cos(k * (second - first));
    const turnSin = Math.sin(k * (second - first));
    let c = Math.cos(k * first);
    let s = Math.sin(k * first);
    for (let i = 0; i < at.length; i++) {
      out[i] = (out[i] as number) + (a * c + b * s) / Math.sqrt(waves);
      [c, s] = [c * turnCos - s * turnSin, s * turnCos + c * turnSin];
    }
  }
  return out;
}

/** The mean of true power over a band [W]. */
export function trueMean(band: readonly [number, number]): number {
  let sum = 0;
  const steps = 400;
  for (let k = 0; k <= steps; k++) {
    sum += truePower(band[0] + ((band[1] - band[0]) * k) / steps) * (k === 0 || k === steps ? 0.5 : 1);
  }
  return sum / steps;
}
