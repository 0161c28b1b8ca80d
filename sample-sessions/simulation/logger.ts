import { air } from './day.ts';
import { type Random, randomOf } from './random.ts';
import type { Trace, TraceField } from './trace.ts';

/** One column of a logger: what it reads, how noisily, in which steps and how often. */
export type Column = {
  readonly header: string;
  /** Text for a units row, where the style has one. */
  readonly unit: string;
  readonly field: TraceField;
  /** SI to the logger's unit. */
  readonly read: (value: number) => number;
  /** Deviation of the sensor's noise, in the logger's unit. */
  readonly noise: number;
  /** Smallest step that the file can show. */
  readonly quantum: number;
  readonly decimals: number;
  /** The sensor gives a new value every so many rows and holds it between. */
  readonly every?: number;
  readonly range?: readonly [number, number];
};

export type LoggerStyle = {
  readonly name: string;
  readonly rate_Hz: number;
  readonly columns: readonly Column[];
  readonly preamble: readonly string[];
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  readonly lineEnd: string;
  readonly hasUnitsRow: boolean;
  readonly time: {
    readonly header: string;
    readonly unit: string;
    readonly show: (seconds: number) => string;
  };
};

/** A stretch that the logger recorded without a pause, and where its clock stood. */
export type Section = { readonly trace: Trace; readonly start_s: number };

/** A pull as the log shows it: times of the first row at full throttle and the last before the lift. */
export type LoggedPull = { readonly start_s: number; readonly end_s: number };

const gauge = (pascal: number) => pascal - air.pressure;
const kelvin = 273.15;
const psi = 6894.757293168;
const pound = 0.45359237;
const percent = (share: number) => share * 100;
const fahrenheit = (k: number) => ((k - kelvin) * 9) / 5 + 32;

const same = (value: number) => value;

/** The car's own logger: commas, one header row with the units in it, metric, 25 rows a second. */
export const plainLogger: LoggerStyle = {
  name: 'plain',
  rate_Hz: 25,
  preamble: [],
  delimiter: ',',
  decimal: '.',
  lineEnd: '\n',
  hasUnitsRow: false,
  time: { header: 'Time (s)', unit: 's', show: (s) => s.toFixed(3) },
  columns: [
    col('Engine speed (rpm)', 'engineSpeed_rpm', same, 2.5, 1, 0),
    col('Vehicle speed (km/h)', 'speed', (v) => v * 3.6, 0.06, 0.1, 1),
    col('Pedal (%)', 'pedal', percent, 0.1, 0.5, 1, { range: [0, 100] }),
    col('Throttle (%)', 'throttle', percent, 0.1, 0.5, 1, { range: [0, 100] }),
    col('Manifold pressure (kPa)', 'manifoldPressure', (p) => p / 1e3, 0.25, 0.1, 1),
    col('Boost target (kPa)', 'boostTarget', (p) => p / 1e3, 0, 0.5, 1),
    col('Spark advance (deg)', 'sparkAdvance_deg', same, 0, 0.1, 1),
    col('Knock retard (deg)', 'knockRetard_deg', same, 0, 0.1, 1),
    col('Lambda', 'lambda', same, 0.002, 0.001, 3, { every: 2 }),
    col('Lambda target', 'lambdaTarget', same, 0, 0.005, 3),
    col('Intake temperature (C)', 'intakeTemperature', (k) => k - kelvin, 0.1, 0.2, 1, { every: 5 }),
    col('Coolant temperature (C)', 'coolantTemperature', (k) => k - kelvin, 0.1, 0.5, 1, { every: 25 }),
    col('Exhaust gas temperature (C)', 'exhaustTemperature', (k) => k - kelvin, 1.2, 1, 0, { every: 5 }),
    col('Air mass flow (g/s)', 'airFlow', (q) => q * 1e3, 0.7, 0.1, 1),
    col('Injector duty (%)', 'injectorDuty', percent, 0.15, 0.1, 1, { range: [0, 100] }),
    col('Fuel pressure (bar)', 'fuelPressure', (p) => p / 1e5, 0.012, 0.01, 2),
    col('Short fuel trim (%)', 'fuelTrim', percent, 0.1, 0.1, 1, { every: 2 }),
    col('Fluid flow (mL/min)', 'fluidFlow', (q) => q * 6e7, 1.2, 1, 0, { range: [0, 1000] }),
    col('Fluid pressure (bar)', 'fluidPressure', (p) => p / 1e5, 0.03, 0.01, 2, { range: [0, 20] }),
    col('Battery voltage (V)', 'batteryVoltage', same, 0.02, 0.05, 2, { every: 5 }),
  ],
};

/** A borrowed logger that nobody prepared for: semicolons, decimal commas, imperial units, a clock. */
export const looseLogger: LoggerStyle = {
  name: 'loose',
  rate_Hz: 20,
  preamble: [
    'Test oval, Fenmoor hatch (invented car, invented log)',
    'Recorded: 2027-03-15',
    'Rate: 20 per second',
    '',
  ],
  delimiter: ';',
  decimal: ',',
  lineEnd: '\r\n',
  hasUnitsRow: true,
  time: { header: 'Clock', unit: 'hh:mm:ss', show: clock },
  columns: [
    col('Engine speed', 'engineSpeed_rpm', same, 2.5, 1, 0, { unit: 'rpm' }),
    col('Vehicle speed', 'speed', (v) => v * 2.2369362920544, 0.04, 0.05, 2, { unit: 'mph' }),
    col('Accelerator pedal', 'pedal', percent, 0.1, 0.4, 1, { unit: '%', range: [0, 100] }),
    col('Throttle', 'throttle', percent, 0.1, 0.4, 1, { unit: '%', range: [0, 100] }),
    col('Boost', 'manifoldPressure', (p) => gauge(p) / psi, 0.04, 0.05, 2, { unit: 'psi' }),
    col('Boost target', 'boostTarget', (p) => p / psi, 0, 0.1, 1, { unit: 'psi' }),
    col('Ignition advance', 'sparkAdvance_deg', same, 0, 0.25, 2, { unit: '°' }),
    col('Knock retard', 'knockRetard_deg', same, 0, 0.25, 2, { unit: '°' }),
    col('AFR', 'lambda', (l) => l * 14.7, 0.03, 0.01, 2, { every: 2 }),
    col('AFR target', 'lambdaTarget', (l) => l * 14.7, 0, 0.05, 2),
    col('Intake air temperature', 'intakeTemperature', fahrenheit, 0.2, 1, 0, { unit: '°F', every: 4 }),
    col('Coolant temperature', 'coolantTemperature', fahrenheit, 0.2, 1, 0, { unit: '°F', every: 20 }),
    col('EGT', 'exhaustTemperature', fahrenheit, 2, 2, 0, { unit: '°F', every: 4 }),
    col('Mass air flow', 'airFlow', (q) => (q * 60) / pound, 0.1, 0.05, 2, { unit: 'lb/min' }),
    col('Injector duty', 'injectorDuty', percent, 0.15, 0.5, 1, { unit: '%', range: [0, 100] }),
    col('Fuel pressure', 'fuelPressure', (p) => p / psi, 0.2, 0.5, 1, { unit: 'psi' }),
    col('Short term fuel trim', 'fuelTrim', percent, 0.1, 0.4, 1, { unit: '%', every: 2 }),
    col('Fluid flow', 'fluidFlow', (q) => q * 6e7, 1.2, 2, 0, { unit: 'cc/min', range: [0, 1000] }),
    col('Battery', 'batteryVoltage', same, 0.02, 0.1, 1, { unit: 'V', every: 4 }),
  ],
};

function col(
  header: string,
  field: TraceField,
  read: Column['read'],
  noise: number,
  quantum: number,
  decimals: number,
  more: Partial<Pick<Column, 'unit' | 'every' | 'range'>> = {},
): Column {
  return { header, unit: '', field, read, noise, quantum, decimals, ...more };
}

/** Seconds as hh:mm:ss.mmm. */
function clock(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const two = (n: number) => String(Math.floor(n)).padStart(2, '0');
  const rest = String(ms % 1000).padStart(3, '0');
  return `${two(ms / 3.6e6)}:${two((ms / 6e4) % 60)}:${two((ms / 1e3) % 60)}.${rest}`;
}

function reading(column: Column, value: number, random: Random): string {
  const noisy = column.read(value) + column.noise * random.normal();
  const stepped = Math.round(noisy / column.quantum) * column.quantum;
  const [low, high] = column.range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const shown = Math.min(high, Math.max(low, stepped)).toFixed(column.decimals);
  return /^-0\.?0*$/.test(shown) ? shown.slice(1) : shown;
}

/**
 * What the logger wrote of these sections, and where the pulls lie on its clock. Rows are a millisecond off
 * their beat now and then, as the logger has other work too.
 */
export function record(
  style: LoggerStyle,
  sections: readonly Section[],
  seed: number,
  label: string,
): { readonly text: string; readonly pulls: readonly LoggedPull[] } {
  const lines: string[] = [...style.preamble];
  const comma = (text: string) => (style.decimal === ',' ? text.replace('.', ',') : text);
  lines.push([style.time.header, ...style.columns.map((c) => c.header), 'Gear'].join(style.delimiter));
  if (style.hasUnitsRow)
    lines.push([style.time.unit, ...style.columns.map((c) => c.unit), ''].join(style.delimiter));

  const pulls: LoggedPull[] = [];
  const randoms = style.columns.map((c) => randomOf(seed, `${label}/${c.header}`));
  const jitter = randomOf(seed, `${label}/jitter`);
  const held: string[] = style.columns.map(() => '');
  for (const { trace, start_s } of sections) {
    const windows = trace.pulls.map((pull) => ({ pull, first: Number.NaN, last: Number.NaN }));
    const beat = 1000 / style.rate_Hz;
    for (let row = 0; ; row++) {
      const index = Math.round(row * beat) + Math.floor(jitter.uniform() * 3);
      if (index >= trace.length) break;
      const time = start_s + index / 1000;
      style.columns.forEach((column, c) => {
        const random = randoms[c];
        if (!random || row % (column.every ?? 1) !== 0) return;
        held[c] = comma(reading(column, trace.fields[column.field][index] ?? Number.NaN, random));
      });
      lines.push([comma(style.time.show(time)), ...held, '3'].join(style.delimiter));
      for (const window of windows) {
        if (index < window.pull.from || index >= window.pull.to) continue;
        if (Number.isNaN(window.first)) window.first = time;
        window.last = time;
      }
    }
    for (const window of windows) pulls.push({ start_s: window.first, end_s: window.last });
  }
  return { text: lines.join(style.lineEnd) + style.lineEnd, pulls };
}
