import type { CarInput } from '../../core/power/index.ts';
import { normal, seeded } from './random.ts';

/**
 * Logs as text, with known truth, for trying the judge behind the reader, the pull finder and the power reckoner.
 * Car, road and loggers are invented.
 */
const rpm = Math.PI / 30;
const gravity = 9.80665;

export const inventedCar: CarInput = {
  mass_kg: 1380,
  gearRatios: [3.4, 2.0, 1.35, 1.02, 0.82],
  finalDrive: 3.94,
  rollingRadius_m: 0.31,
  pullGear: 3,
  wheelInertia_kg_m2: 3.5,
  engineInertia_kg_m2: 0.16,
  dragArea_m2: 0.68,
  rollingCoefficient: 0.012,
  drivetrainEfficiency: 0.87,
  tyreSlip: 0.012,
};

/** What is set, and what the moment brought, for one pull. SI, angles in degrees as written in the log. */
export type PullTruth = {
  /** Power against the baseline curve, as a share on top. */
  readonly share: number;
  readonly boost_kPa: number;
  readonly spark_deg: number;
  readonly lambda: number;
  readonly fluid_mL_min: number;
  readonly retard_deg: number;
  readonly intake_C: number;
  /** Steady wind and slope of this pull, as an added force [N]. */
  readonly force_N: number;
  /** Default is third. */
  readonly gear?: number;
};

/** How a logger writes. */
export type LoggerStyle = {
  readonly name: string;
  readonly rate: number;
  readonly rpmNoise: number;
  readonly rpmStep: number;
  /** Null: no road speed in the log. */
  readonly speed: { readonly noise_km_h: number; readonly step_km_h: number; readonly hold_s: number } | null;
  readonly isContinental: boolean;
  readonly isImperial: boolean;
  /** Readings of slow channels repeat for this long [s]. */
  readonly slow_s: number;
};

export const loggerStyles: readonly LoggerStyle[] = [
  {
    name: '20 Hz, plain',
    rate: 20,
    rpmNoise: 8,
    rpmStep: 1,
    speed: { noise_km_h: 0.1, step_km_h: 0.1, hold_s: 0 },
    isContinental: false,
    isImperial: false,
    slow_s: 0,
  },
  {
    name: '10 Hz, semicolons',
    rate: 10,
    rpmNoise: 10,
    rpmStep: 10,
    speed: { noise_km_h: 0.2, step_km_h: 1, hold_s: 0 },
    isContinental: true,
    isImperial: false,
    slow_s: 0.5,
  },
  {
    name: '50 Hz, imperial',
    rate: 50,
    rpmNoise: 12,
    rpmStep: 1,
    speed: { noise_km_h: 0.15, step_km_h: 0.16, hold_s: 0.1 },
    isContinental: false,
    isImperial: true,
    slow_s: 1,
  },
  {
    name: '100 Hz, no speed',
    rate: 100,
    rpmNoise: 15,
    rpmStep: 5,
    speed: null,
    isContinental: false,
    isImperial: false,
    slow_s: 0.2,
  },
];

/** 0 below spool, 1 above. */
const rise = (w: number) => 1 / (1 + Math.exp(-(w / rpm - 3250) / 230));

/** Wheel power of the baseline [W] at engine speed [rad/s]. */
export function baselinePower(w: number): number {
  const n = w / rpm;
  return (130 + 165 * rise(w) - (n > 5300 ? 45 * ((n - 5300) / 1400) ** 2 : 0)) * w;
}

/** One log of several pulls. */
export function inventLog(pulls: readonly PullTruth[], style: LoggerStyle, seed: number): string {
  const uniform = seeded(seed);
  for (let i = 0; i < 9; i++) uniform();
  const gauss = normal(uniform);
  const car = inventedCar;
  const inertia = car.mass_kg + (car.wheelInertia_kg_m2 ?? 0) / (car.rollingRadius_m ?? 1) ** 2;
  const rows: string[] = [header(style)];
  const step = 1 / style.rate;
  const inner = 4;
  let t = 5 * uniform();
  const held = new Map<string, { until: number; value: number }>();
  const sample = (key: string, hold: number, value: () => number) => {
    const old = held.get(key);
    if (old && t < old.until) return old.value;
    const fresh = value();
    held.set(key, { until: t + hold - 1e-9, value: fresh });
    return fresh;
  };
  for (const pull of pulls) {
    const ratio = car.gearRatios?.[(pull.gear ?? 3) - 1] ?? 1;
    const overall = (ratio * (car.finalDrive ?? 1)) / (car.rollingRadius_m ?? 1);
    const start = (2350 + 120 * uniform()) * rpm;
    const end = (6350 + 120 * uniform()) * rpm;
    let v = (start / overall) * 0.97;
    let pedal = 0.25;
    let phase: 'before' | 'full' | 'after' = 'before';
    let until = t + 2;
    for (;;) {
      const w = v * overall * (1 + (pedal === 1 ? 0.012 : 0.002));
      if (phase === 'before' && t >= until) {
        phase = 'full';
        pedal = 1;
      } else if (phase === 'full' && w >= end) {
        phase = 'after';
        pedal = 0;
        until = t + 2;
      } else if (phase === 'after' && t >= until) break;
      rows.push(row(t, w, v, pedal, pull, style, gauss, sample));
      for (let i = 0; i < inner; i++) {
        const load =
          car.mass_kg * gravity * (car.rollingCoefficient ?? 0) +
          0.5 * 1.2 * (car.dragArea_m2 ?? 0) * v * v +
          pull.force_N;
        const speed = v * overall * 1.012;
        const power = baselinePower(speed) * (1 + pull.share);
        const a = phase === 'full' ? (power / v - load) / inertia : phase === 'before' ? 0.3 : -1.5;
        v += (a * step) / inner;
      }
      t += step;
    }
    t += 3;
  }
  return `${rows.join('\n')}\n`;
}

const columns = [
  'Time',
  'RPM',
  'Speed',
  'Pedal',
  'Boost',
  'Ignition advance',
  'Lambda',
  'Intake air temp',
  'Coolant temp',
  'Knock retard',
  'Injection flow',
];

function header(style: LoggerStyle): string {
  const units = style.isImperial
    ? ['s', 'rpm', 'mph', '%', 'psi', 'deg', 'AFR', 'F', 'F', 'deg', 'mL/min']
    : ['s', 'rpm', 'km/h', '%', 'kPa', 'deg', 'lambda', 'C', 'C', 'deg', 'mL/min'];
  const names = columns.map((c) =>
    c === 'Injection flow' ? 'Water-methanol flow' : c === 'Lambda' && style.isImperial ? 'AFR' : c,
  );
  return names
    .map((name, i) => `${name} (${units[i]})`)
    .filter((_, i) => style.speed !== null || i !== 2)
    .join(style.isContinental ? ';' : ',');
}

function row(
  t: number,
  w: number,
  v: number,
  pedal: number,
  pull: PullTruth,
  style: LoggerStyle,
  gauss: () => number,
  sample: (key: string, hold: number, value: () => number) => number,
): string {
  const stepped = (value: number, step: number) => Math.round(value / step) * step;
  const engine = stepped(w / rpm + style.rpmNoise * gauss(), style.rpmStep);
  const load = pedal === 1 ? rise(w) : 0.05;
  const boost = pull.boost_kPa * load + 0.6 * gauss();
  const spark = 24 - 10 * load + (pull.spark_deg - pull.retard_deg) * load + 0.1 * gauss();
  const lambda = (pedal === 1 ? pull.lambda : 0.99) + 0.008 * gauss();
  const intake = sample('intake', style.slow_s, () => pull.intake_C + 0.2 * gauss());
  const coolant = sample('coolant', style.slow_s, () => 90 + 0.3 * gauss());
  const fluid = Math.max(0, pull.fluid_mL_min * (pedal === 1 ? load : 0) + 2 * gauss());
  const speed = style.speed
    ? sample('speed', style.speed.hold_s, () =>
        stepped(v * 3.6 + (style.speed?.noise_km_h ?? 0) * gauss(), style.speed?.step_km_h ?? 1),
      )
    : Number.NaN;
  const fahrenheit = (c: number) => (c * 9) / 5 + 32;
  const cells: readonly (readonly [number, number])[] = [
    [t, 3],
    [engine, 0],
    [style.isImperial ? speed / 1.609344 : speed, style.isImperial ? 2 : 1],
    [pedal * 100, 0],
    [style.isImperial ? boost / 6.894757 : boost, 2],
    [spark, 1],
    [style.isImperial ? lambda * 14.7 : lambda, style.isImperial ? 2 : 3],
    [style.isImperial ? fahrenheit(intake) : intake, 1],
    [style.isImperial ? fahrenheit(coolant) : coolant, 1],
    [pedal === 1 ? pull.retard_deg * load : 0, 1],
    [fluid, 0],
  ];
  return cells
    .filter((_, i) => style.speed !== null || i !== 2)
    .map(([value, digits]) => {
      const text = value.toFixed(digits);
      return style.isContinental ? text.replace('.', ',') : text;
    })
    .join(style.isContinental ? ';' : ',');
}
