import type { Drive } from './drive.ts';
import type { Random } from './random.ts';

/** How well the logger saw the drive. Steps and noises are in the unit of the channel. */
export type LoggerTraits = {
  readonly rate_Hz: number;
  readonly startTime_s: number;
  /** Share of a step by which stamps wander. */
  readonly jitter: number;
  readonly rpmNoise: number;
  readonly rpmStep: number;
  readonly speedNoise_km_h: number;
  readonly speedStep_km_h: number;
  /** The speed channel is refreshed every so many rows. */
  readonly speedEvery: number;
  readonly pedalNoise_percent: number;
  readonly pedalStep_percent: number;
  /** What the throttle reads wide open. */
  readonly throttleFull_percent: number;
  readonly has: {
    readonly pedal: boolean;
    readonly throttle: boolean;
    readonly boost: boolean;
    readonly speed: boolean;
    readonly gear: boolean;
  };
};

/** A log as a table of numbers in usual units, with its truth. */
export type LoggedTable = {
  readonly columns: readonly {
    readonly name: string;
    readonly unit: string;
    readonly values: readonly number[];
  }[];
  readonly pulls: readonly {
    readonly start: number;
    readonly end: number;
    readonly isAborted: boolean;
    readonly gear: number;
  }[];
};

export function randomTraits(random: Random): LoggerTraits {
  const rate = random.pick([10, 10, 15, 20, 20, 25, 50, 100]);
  const openings = random.pick(['pedal', 'throttle', 'both', 'both']);
  return {
    rate_Hz: rate,
    startTime_s: random.chance(0.5) ? 0 : random.between(0, 3000),
    jitter: random.chance(0.4) ? random.between(0, 0.2) : 0,
    rpmNoise: random.between(0, 20),
    rpmStep: random.pick([1, 1, 0.25, 10, 25, 40]),
    speedNoise_km_h: random.between(0, 0.4),
    speedStep_km_h: random.pick([0.01, 0.1, 0.1, 1]),
    speedEvery: random.pick([1, 1, 1, 2, 4]),
    pedalNoise_percent: random.pick([0, 0.2, 0.5, 1, 1.5]),
    pedalStep_percent: random.pick([0.01, 0.1, 0.39, 1]),
    throttleFull_percent: random.pick([100, 100, 82, 88, 99.6]),
    has: {
      pedal: openings !== 'throttle',
      throttle: openings !== 'pedal',
      boost: random.chance(0.7),
      speed: random.chance(0.75),
      gear: random.chance(0.25),
    },
  };
}

/** Samples a drive as a logger would. */
export function logDrive(drive: Drive, traits: LoggerTraits, random: Random): LoggedTable {
  const start = drive.time[0] ?? 0;
  const end = drive.time.at(-1) ?? 0;
  const count = Math.max(2, Math.floor((end - start) * traits.rate_Hz));
  const time: number[] = [];
  const at: number[] = [];
  for (let i = 0; i < count; i++) {
    const t = start + (i + traits.jitter * (random.next() - 0.5)) / traits.rate_Hz;
    at.push(Math.max(0, Math.min(drive.time.length - 1, Math.round((t - start) / drive.step))));
    time.push(Math.round((t - start + traits.startTime_s) * 1000) / 1000);
  }
  const stepped = (v: number, step: number) => Math.round(Math.round(v / step) * step * 1e4) / 1e4;
  const sample = (source: readonly number[], scale: number, noise: number, step: number, every = 1) => {
    let held = 0;
    return at.map((k, i) => {
      if (i % every === 0) held = stepped((source[k] ?? 0) * scale + noise * random.normal(), step);
      return held;
    });
  };
  const clamp = (values: number[], low: number, high: number) =>
    values.map((v) => Math.max(low, Math.min(high, v)));
  const columns = [{ name: 'Time', unit: 's', values: time }];
  const add = (name: string, unit: string, values: number[]) => columns.push({ name, unit, values });
  add('Engine Speed', 'rpm', sample(drive.rpm, 1, traits.rpmNoise, traits.rpmStep));
  if (traits.has.speed)
    add(
      'Vehicle Speed',
      'km/h',
      clamp(
        sample(drive.speed, 3.6, traits.speedNoise_km_h, traits.speedStep_km_h, traits.speedEvery),
        0,
        400,
      ),
    );
  if (traits.has.pedal)
    add('Pedal', '%', sample(drive.pedal, 100, traits.pedalNoise_percent, traits.pedalStep_percent));
  if (traits.has.throttle) {
    // A throttle plate follows the pedal within 40 ms and never shuts fully.
    let plate = drive.pedal[0] ?? 0;
    const plates = drive.pedal.map((p) => {
      plate += ((p - plate) * drive.step) / 0.04;
      return 0.03 + 0.97 * plate;
    });
    add(
      'Throttle',
      '%',
      sample(plates, traits.throttleFull_percent, traits.pedalNoise_percent, traits.pedalStep_percent),
    );
  }
  if (traits.has.boost) add('Boost', 'kPa', sample(drive.boost, 1e-3, 0.6, 0.1));
  if (traits.has.gear) add('Gear', '', sample(drive.gear, 1, 0, 1));
  return {
    columns,
    // The first sample at full throttle and the last before the lift.
    pulls: drive.pulls.map((p) => ({
      start: time[at.findIndex((k) => (drive.time[k] ?? 0) >= p.start)] ?? 0,
      end: time[at.findLastIndex((k) => (drive.time[k] ?? 0) <= p.end)] ?? 0,
      isAborted: p.isAborted,
      gear: p.gear,
    })),
  };
}

/** The table as a plain comma-separated text. */
export function plainText(table: LoggedTable): string {
  const head = table.columns.map((c) => (c.unit === '' ? c.name : `${c.name} (${c.unit})`)).join(',');
  const rows = (table.columns[0]?.values ?? []).map((_, i) =>
    table.columns.map((c) => c.values[i]).join(','),
  );
  return `${[head, ...rows].join('\n')}\n`;
}
