/**
 * How near acceleration alone can tell when a foot met its stop: the best estimate there is, on simulated starts.
 *
 *   node tests/bench/foot-bound.ts [starts a row, 100]
 *
 * Each start has a foot of 0.06 to 0.5 s of one of three shapes, a plate law, a manifold and a charger of its own.
 * Engine speed before and after is straight but for these, its noise is known. "Shape known" is told everything but
 * the moment; "shape unknown" knows the families that feet, plates and manifolds are drawn from and weighs all of
 * them by their likelihood (the mean of the posterior, which no estimate beats in squared error).
 */
import { solveNormal } from '../../core/power/smoothing/normal-equations.ts';
import { createRandom, type Random } from '../support/log-generator/random.ts';

const count = Number(process.argv[2] ?? 100);
const step_s = 0.005;
const cells = 500;

const feet: readonly ((s: number) => number)[] = [
  (s) => s,
  (s) => (1 - Math.cos(Math.PI * s)) / 2,
  (s) => (s < 0.3 ? 2 * s : 0.6 + (4 / 7) * (s - 0.3)),
];

/** Integrals of the torque's share that follows the plate, and of the share that follows the charger [s]. */
type Course = { readonly travel_s: number; readonly plate: Float64Array; readonly charger: Float64Array };

function course(travel_s: number, foot: number, law: number, manifold_s: number, charger_s: number): Course {
  const before = 0.15;
  const open = (pedal: number) => 1 - (1 - pedal) ** law;
  const plate = new Float64Array(cells);
  const charger = new Float64Array(cells);
  let [a, b] = [0, 0];
  for (let i = 1; i < cells; i++) {
    const move = feet[foot]?.(Math.min(1, ((i - 0.5) * step_s) / travel_s)) ?? 0;
    const share = (open(before + (1 - before) * move) - open(before)) / (1 - open(before));
    a += ((share - a) * step_s) / manifold_s;
    b += ((a - b) * step_s) / charger_s;
    plate[i] = (plate[i - 1] ?? 0) + a * step_s;
    charger[i] = (charger[i - 1] ?? 0) + b * step_s;
  }
  return { travel_s, plate, charger };
}

function readAt(values: Float64Array, t: number): number {
  if (t <= 0) return 0;
  const i = Math.min(cells - 2, Math.floor(t / step_s));
  return (values[i] ?? 0) + (t / step_s - i) * ((values[i + 1] ?? 0) - (values[i] ?? 0));
}

const family: Course[] = [];
for (const travel of [0.06, 0.12, 0.18, 0.24, 0.3, 0.36, 0.42, 0.48])
  for (const foot of feet.keys())
    for (const law of [1.3, 1.8, 2.4])
      for (const manifold of [0.03, 0.06, 0.09]) family.push(course(travel, foot, law, manifold, 0.35));

/** Squared error of level, slope before, plate and charger at their best; infinite where torque would fall. */
function squaredError(t: readonly number[], y: readonly number[], tried: Course, stop_s: number): number {
  const normal = new Float64Array(16);
  const right = new Float64Array(4);
  let squares = 0;
  for (const [i, at] of t.entries()) {
    const since = at - stop_s + tried.travel_s;
    const row = [1, at, readAt(tried.plate, since), readAt(tried.charger, since)];
    const v = y[i] ?? 0;
    squares += v * v;
    for (const [r, x] of row.entries()) {
      right[r] = (right[r] ?? 0) + x * v;
      for (const [c, z] of row.entries()) normal[4 * r + c] = (normal[4 * r + c] ?? 0) + x * z;
    }
  }
  const found = solveNormal(normal, right, 4);
  if (!found || (found[2] ?? 0) < 0 || (found[3] ?? 0) < 0) return Number.POSITIVE_INFINITY;
  return Math.max(0, squares - found.reduce((sum, x, k) => sum + x * (right[k] ?? 0), 0));
}

function bestMoment(t: readonly number[], y: readonly number[], tried: readonly Course[], noise: number) {
  const all: { log: number; at: number }[] = [];
  for (const one of tried)
    for (let at = -0.6; at <= 0.6; at += 0.02)
      all.push({ log: (-0.5 * squaredError(t, y, one, at)) / noise ** 2, at });
  const most = all.reduce((m, { log }) => Math.max(m, log), Number.NEGATIVE_INFINITY);
  let [weight, sum] = [0, 0];
  for (const { log, at } of all) {
    const w = Math.exp(log - most);
    weight += w;
    sum += w * at;
  }
  return sum / weight;
}

/** Errors of both estimates at one start whose foot meets its stop at 0 s. */
function start(random: Random, rate_Hz: number, noise_rpm: number, step_rpm: number, rise_rpm_s: number) {
  const travel = random.between(0.06, 0.5);
  const foot = random.int(0, 2);
  const law = random.between(1.2, 2.6);
  const real = course(travel, foot, law, random.between(0.03, 0.09), random.between(0.15, 0.5));
  const fast = rise_rpm_s * random.between(0.5, 0.8);
  const before = random.between(-10, 40);
  const t: number[] = [];
  const y: number[] = [];
  for (let at = -0.9 + random.next() / rate_Hz; at < 0.9; at += 1 / rate_Hz) {
    const since = at + travel;
    const late = (rise_rpm_s - fast) * readAt(real.charger, since);
    const rpm = 2300 + before * at + fast * readAt(real.plate, since) + late + noise_rpm * random.normal();
    t.push(at);
    y.push(Math.round(rpm / step_rpm) * step_rpm - 2300);
  }
  const noise = Math.hypot(noise_rpm, step_rpm / Math.sqrt(12));
  return [bestMoment(t, y, [real], noise), bestMoment(t, y, family, noise)] as const;
}

const rows = [
  ['10 a second, 25 rpm, 600 rpm/s', 10, 3, 25, 600],
  ['10 a second, 25 rpm, 300 rpm/s', 10, 3, 25, 300],
  ['20 a second, noise of 7 rpm, 600 rpm/s', 20, 7, 1, 600],
  ['50 a second, noise of 7 rpm, 600 rpm/s', 50, 7, 1, 600],
] as const;

console.log('| log, rise at full throttle | shape known: deviation, within 0.15 s | shape unknown |');
console.log('| --- | ---: | ---: |');
for (const [title, rate_Hz, noise_rpm, step_rpm, rise_rpm_s] of rows) {
  const random = createRandom(77);
  const found = Array.from({ length: count }, () => start(random, rate_Hz, noise_rpm, step_rpm, rise_rpm_s));
  const cell = (k: 0 | 1) => {
    const deviation = Math.sqrt(found.reduce((sum, f) => sum + f[k] ** 2, 0) / count);
    const inside = found.filter((f) => Math.abs(f[k]) <= 0.15).length / count;
    return `${deviation.toFixed(3)} s, ${(100 * inside).toFixed(0)} %`;
  };
  console.log(`| ${title} | ${cell(0)} | ${cell(1)} |`);
}
