import type { LoggedTable } from '../log-generator/logger.ts';
import type { Random } from '../log-generator/random.ts';
import type { DayRow, RoadDay } from './road-day.ts';

/** What tells full throttle in a recording. */
export type Told = 'pedal' | 'throttle' | 'boost' | 'speed' | 'engine speed';

export type Recording = LoggedTable & { readonly rate_Hz: number };

/**
 * A day as a logger of that rate saw it: clocks that wander, numbers in steps, a slow speed channel, rows and cells
 * that went missing. `told` says which channels it has; engine speed is always there.
 */
export function record(day: RoadDay, rate_Hz: number, told: Told, random: Random): Recording {
  const jitter = random.pick([0, 0, 0.1, 0.3]);
  const lostRows = random.pick([0, 0, 0.003]);
  const lostCells = random.pick([0, 0, 0.005]);
  const seconds = day.rows.length * day.step;
  const at: number[] = [];
  const time: number[] = [];
  for (let n = 1; n < seconds * rate_Hz - 1; n++) {
    const t = (n + jitter * (random.next() - 0.5)) / rate_Hz;
    if (random.chance(lostRows)) continue;
    at.push(Math.min(day.rows.length - 1, Math.round(t / day.step) - 1));
    time.push(Math.round(t * 1000) / 1000);
  }
  const take = (of: (row: DayRow) => number, noise: number, unit: number, every = 1) => {
    let held = Number.NaN;
    return at.map((k, n) => {
      const row = day.rows[k];
      if (row && n % every === 0) held = Math.round((of(row) + noise * random.normal()) / unit) * unit;
      return random.chance(lostCells) ? Number.NaN : Math.round(held * 1e5) / 1e5;
    });
  };
  const columns: { name: string; unit: string; values: number[] }[] = [
    { name: 'Time', unit: 's', values: time },
    {
      name: 'Engine Speed',
      unit: 'rpm',
      values: take((r) => r.rpm, random.between(0, 15), random.pick([0.25, 1, 10, 25, 32])),
    },
  ];
  const speedEvery = random.pick([1, 1, 1, 2]);
  if (told !== 'engine speed')
    columns.push({
      name: 'Vehicle Speed',
      unit: 'km/h',
      values: take((r) => r.speed * 3.6, random.between(0, 0.3), random.pick([0.01, 0.1, 1]), speedEvery),
    });
  const opening = random.pick([0.1, 0.4, 0.5, 1]);
  const full = random.pick([100, 100, 86, 99]);
  if (told === 'pedal')
    columns.push({
      name: 'Pedal',
      unit: '%',
      values: take((r) => r.pedal * full, random.between(0, 0.5), opening),
    });
  if (told === 'throttle')
    columns.push({
      name: 'Throttle',
      unit: '%',
      values: take((r) => 4 + (full - 4) * r.plate, random.between(0, 0.5), opening),
    });
  if (told === 'boost')
    columns.push({ name: 'Boost', unit: 'kPa', values: take((r) => r.boost, 0.6, random.pick([0.1, 1])) });
  const stamp = (t: number, way: 'first' | 'last') => {
    const n = way === 'first' ? time.findIndex((s) => s >= t) : time.findLastIndex((s) => s <= t);
    return time[n] ?? t;
  };
  return {
    rate_Hz,
    columns,
    pulls: day.pulls.map((p) => ({
      start: stamp(p.start, 'first'),
      end: stamp(p.end, 'last'),
      gear: p.gear,
      isAborted: false,
    })),
  };
}
