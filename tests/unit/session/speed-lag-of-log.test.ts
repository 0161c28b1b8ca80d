import { expect, it } from 'vitest';
import { CarSchema, ConditionsSchema, type PullPower } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { analyseRun } from '../../../core/session/index.ts';
import { normal, seeded } from '../../support/random.ts';

/** Distance per radian of the crank in third and in second gear [m]. */
const gears = { second: 0.038, third: 0.056 };
const mass = 1400;
const most = 5600;
/** By which the road speed reaches the log late [s]. */
const lag = 0.2;
const car = CarSchema.parse({
  mass_kg: mass,
  gearRatios: [3.5, 2.06, 1.4, 1.05],
  finalDrive: 4,
  // 0.056 m by 1.4 and 4: the radius is the truth's own.
  rollingRadius_m: 0.056 * 1.4 * 4,
  wheelInertia_kg_m2: 0,
  engineInertia_kg_m2: 0,
  dragArea_m2: 0.65,
  rollingCoefficient: 0.012,
});
const conditions = ConditionsSchema.parse({
  place: 'road',
  ambient_C: 20,
  barometer_kPa: 101.325,
  relativeHumidity_percent: 0,
  grade_percent: 0,
});
const load = (v: number) => 0.012 * mass * 9.80665 + 0.5 * 1.2041 * 0.65 * v * v;

type Row = { t: number; v: number; w: number; pedal: number; power: number };

/** Two pulls in third gear, then one in third that follows on one in second; the foot comes up for the change. */
function drive(): Row[] {
  const rows: Row[] = [];
  let v = 13;
  const dt = 0.005;
  const go = (
    distance: number,
    force: (s: number, v: number) => number,
    pedal: number,
    until: () => boolean,
  ) => {
    for (let s = 0; !until() && s < 20; s += dt) {
      const f = force(s, v);
      v += ((f - load(v)) / mass) * dt;
      const w = (v / distance) * (1 + (0.02 * f) / most);
      rows.push({ t: rows.length * dt, v, w, pedal, power: f * v });
    }
  };
  const wait = (seconds: number) => {
    const end = rows.length + seconds / dt;
    return () => rows.length >= end;
  };
  const hold = () => load(v);
  // Charge comes up over some tenths of a second; from 40 m/s on force falls.
  const full = (s: number, speed: number) =>
    most * (1 - 0.7 * Math.exp(-s / 0.45)) * (1 - 0.012 * Math.max(0, speed - 20));
  const pull = (gear: number) => go(gear, full, 100, () => v / gear > 680);
  const slow = () => {
    go(gears.third, () => -900, 0, wait(2));
    go(
      gears.third,
      () => -6000,
      0,
      () => v < 13,
    );
    go(gears.third, hold, 15, wait(4));
  };
  go(gears.third, hold, 15, wait(5));
  pull(gears.third);
  slow();
  pull(gears.third);
  slow();
  pull(gears.second);
  go(gears.second, () => -300, 0, wait(0.3));
  go(gears.third, () => -300, 0, wait(0.2));
  pull(gears.third);
  slow();
  return rows;
}

/** Logged 20 times a second. */
function logOf(rows: readonly Row[], seed: number): string {
  const gauss = normal(seeded(seed));
  const lines = ['Time (s),Engine Speed (rpm),Vehicle Speed (km/h),Pedal (%)'];
  for (let i = 0; i < rows.length; i += 10) {
    const { t, w, pedal } = rows[i] as Row;
    const { v } = rows[Math.max(0, i - lag / 0.005)] as Row;
    const rpm = (w * 30) / Math.PI + 6 * gauss();
    lines.push([t.toFixed(3), rpm.toFixed(0), (v * 3.6 + 0.08 * gauss()).toFixed(1), pedal].join(','));
  }
  return `${lines.join('\n')}\n`;
}

/** Root mean square of what power strays from the truth, over the mean of that. */
function strayOf(power: PullPower, rows: readonly Row[]): number {
  let squares = 0;
  let mean = 0;
  for (const [i, told] of power.wheelPower.entries()) {
    const truth = rows[Math.round((power.time[i] as number) / 0.005)]?.power as number;
    squares += (told - truth) ** 2 / power.wheelPower.length;
    mean += truth / power.wheelPower.length;
  }
  return Math.sqrt(squares) / mean;
}

const draws = 12;

it('pulls of one log share the lag of its road speed, also one that begins with a gear change', () => {
  const rows = drive();
  const lags: number[][] = [[], [], [], []];
  for (let seed = 41; seed < 41 + draws; seed++) {
    const bytes = new TextEncoder().encode(logOf(rows, seed));
    const record = { columns: [], pullEdits: [] };
    const { pulls } = unwrap(analyseRun(bytes, { file: 'lag.csv', runId: 'lag', record, car, conditions }));
    expect(pulls).toHaveLength(4);
    for (const [i, { power }] of pulls.entries()) {
      if (!power) throw new Error('no power');
      const late = power.notes.find((n) => n.code === 'power/speed-late');
      lags[i]?.push(late?.code === 'power/speed-late' ? late.facts.lag : 0);
      expect(strayOf(power, rows)).toBeLessThan(0.015);
    }
  }
  for (const told of lags) {
    // What all draws share would not average out over the pulls of a day.
    expect(Math.abs(told.reduce((sum, x) => sum + x, 0) / draws - lag)).toBeLessThan(0.005);
    for (const x of told) expect(Math.abs(x - lag)).toBeLessThan(0.03);
  }
});
