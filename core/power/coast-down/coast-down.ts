import { type Channel, channelOf, type Log } from '../../log/index.ts';
import { fail, type Note, ok, type Result } from '../../result/index.ts';
import type { Car } from '../car/car.ts';
import { wheelMass } from '../car/wheel-mass.ts';
import { type FormulaCard, input } from '../explain.ts';
import { inputUncertainty, standardGravity } from '../practice.ts';
import { type Matrix, solveNormal } from '../smoothing/normal-equations.ts';
import { type SpeedSignal, speedSignal } from '../speed/speed-signal.ts';
import type { Coefficients } from './coast-down-time.ts';
import type { Stray } from './held-back.ts';
import { rollErrors } from './roll-errors.ts';
import { type RollForce, rollForces } from './roll-forces.ts';
import { type Roll, sumsOf } from './roll-sums.ts';

/** Samples of one roll, half open, in the log's own indices, and which way it went: 1 out, -1 back. */
export type CoastDownWindow = { readonly from: number; readonly to: number; readonly way?: 1 | -1 };

/** A roll with the log that holds it: many loggers begin a new file with each. */
export type LoggedRoll = CoastDownWindow & { readonly log: Log };

/** The rolls of one log. */
export function rollsIn(log: Log, windows: readonly CoastDownWindow[]): LoggedRoll[] {
  return windows.map((window) => ({ ...window, log }));
}

/** Speeds that a roll can be read from, the road's own first. */
const rolledSpeeds = ['gpsSpeed', 'vehicleSpeed'] as const;

/** What each of these logs is read from: one kind for all where all hold it, since a speedometer is off by percents. */
export function rolledSpeedOf(rolls: readonly LoggedRoll[]): (log: Log) => Channel | undefined {
  const shared = rolledSpeeds.find((kind) => rolls.every((r) => channelOf(r.log, kind)));
  return (log) =>
    shared ? channelOf(log, shared) : (channelOf(log, 'gpsSpeed') ?? channelOf(log, 'vehicleSpeed'));
}

export type CoastDownFit = Coefficients & {
  /** Covariance of (a, b, c), row by row, in their own units. */
  readonly covariance: readonly (readonly number[])[];
  /** Halves of the 95 % intervals. */
  readonly half: Coefficients;
  /** Force at a speed with half of its 95 % interval [N]. */
  readonly forceAt: (v: number) => { readonly force: number; readonly half: number };
  /** Scatter of the speed about the fit [m/s]. */
  readonly scatter: number;
  /** Mass with turning wheels that the fit used [kg]. */
  readonly mass: number;
  readonly rolls: number;
  /** The slowest and the fastest that was rolled [m/s]; beyond them the force rests on its form alone. */
  readonly rolled: { readonly from: number; readonly to: number };
  /** What holds each roll back beyond the fit in the middle of the rolled speeds, in their order. */
  readonly ownForces: readonly (RollForce | null)[];
  /** Speed of each roll against the fit. */
  readonly strays: readonly Stray[];
  /** What the way out adds to the force and the way back takes off: s + t v [N, N s/m]; null where one way is missing. */
  readonly perWay: { readonly s: number; readonly t: number } | null;
};

/** Rolls of one fit: an afternoon brings a dozen or two (common practice), and the work grows with their cube. */
export const mostRolls = 100;

/**
 * Road load from rolling in neutral.
 *
 *   M dv/dt = -(a + b v + c v^2 ± (s + t v)),  M = m + Iw / r^2,  a less t^2 / 4c
 *
 * The whole speed trace is fitted, not its slope: coefficients and the start speed of each roll are moved until the
 * integrated speed lies closest to the samples (Gauss-Newton with exact sensitivities). Rolls whose windows say both
 * ways give the slope (s) and the steady wind w (t = 2 c w, which leaves c w^2 in a) coefficients of their own: the
 * mean of two fits would not cancel them, since the car takes longer over the one way. One way alone takes them in.
 *
 * @param rolled   one roll or several, of one log or several, each in neutral from first to last sample
 * @returns        coefficients in SI with covariance, 95 % intervals by Student's t (roll-errors). The mass counts as
 *                 known: the force is in proportion to it.
 *
 * Valid:  speed falls by 8 m/s or more; b may come out negative, as it does in published data.
 * Errors: power/no-speed, power/coast-down-too-many, power/coast-down-too-short, power/coast-down-not-slowing,
 *         power/coast-down-no-fit.
 * Source: equation of motion; form of F as in 40 CFR 1066.
 * Check:  120.19 N, 2.859 N s/m, 0.2716 N s^2/m^2, 1956.7 kg: from 75 to 15 mph in 196.69 s.
 */
export function fitCoastDown(rolled: readonly LoggedRoll[], car: Car): Result<CoastDownFit> {
  if (rolled.length > mostRolls)
    return fail({ code: 'power/coast-down-too-many', facts: { rolls: rolled.length, most: mostRolls } });
  const speedOf = rolledSpeedOf(rolled);
  const rolls: Roll[] = [];
  for (const window of rolled) {
    const where = { file: window.log.file };
    const channel = speedOf(window.log);
    if (!channel) return fail({ code: 'power/no-speed', facts: {}, where });
    const roll = fallingSignal(window.log, channel, window);
    const seconds = roll ? (roll.time.at(-1) ?? 0) - (roll.time[0] ?? 0) : 0;
    const speedDrop = roll ? (roll.value[0] ?? 0) - (roll.value.at(-1) ?? 0) : 0;
    const { from, to } = window;
    if (roll && speedDrop < 0)
      return fail({ code: 'power/coast-down-not-slowing', facts: { from, to }, where });
    if (!roll || roll.time.length < 12 || speedDrop < 8) {
      const samples = roll?.time.length ?? 0;
      return fail({ code: 'power/coast-down-too-short', facts: { samples, seconds, speedDrop }, where });
    }
    rolls.push({ ...roll, way: window.way ?? 1 });
  }
  const mass = car.mass_kg + wheelMass(car).mass;
  return fitRolls(rolls, mass);
}

/** What rolls one way leave in the coefficients, or what both ways showed of slope and wind. */
export function wayRemark({ perWay, c }: CoastDownFit, car: Car): Note {
  const weight = car.mass_kg * standardGravity;
  const grade = inputUncertainty.gradeAssumed;
  return perWay
    ? {
        code: 'power/coast-down-both-ways',
        facts: { grade: perWay.s / weight, headwind: c > 0 ? perWay.t / (2 * c) : 0 },
      }
    : { code: 'power/coast-down-one-way', facts: { grade, force: grade * weight } };
}

/** Rising is what the reader of speed signals knows: a falling one is read upside down. */
function fallingSignal(log: Log, channel: Channel, window: CoastDownWindow): SpeedSignal | null {
  const values = channel.values.map((v) => -v);
  const signal = speedSignal(log, { ...channel, values }, window.from, window.to);
  return signal && { ...signal, value: signal.value.map((v) => -v) };
}

/** Share of the force by which a road load may be unknown in the middle of its speeds and still be told. */
const mostUnknown = 0.3;

function fitRolls(rolls: readonly Roll[], mass: number): Result<CoastDownFit> {
  const samples = rolls.reduce((sum, r) => sum + r.time.length, 0);
  const isBothWays = rolls.some((r) => r.way === 1) && rolls.some((r) => r.way === -1);
  const shared = isBothWays ? 5 : 3;
  const size = shared + rolls.length;
  const start = [0.012 * 9.8 * mass, 0, 0.4, 0, 0].slice(0, shared);
  let p = [...start, ...rolls.map((r) => r.value[0] as number)];
  let last = sumsOf(rolls, p, shared, mass);
  let damping = 1e-3;
  let isSettled = false;
  for (let round = 0; round < 60 && !isSettled; round++) {
    const step = solveNormal(damped(last.normal, size, damping), last.right, size);
    if (!step) break;
    const next = p.map((x, i) => x + (step[i] as number));
    const sums = sumsOf(rolls, next, shared, mass);
    if (Number.isFinite(sums.squares) && sums.squares <= last.squares * (1 + 1e-12)) {
      isSettled = last.squares - sums.squares <= 1e-10 * last.squares + 1e-24;
      p = next;
      last = sums;
      damping = Math.max(1e-12, damping / 10);
    } else {
      damping *= 10;
      if (damping > 1e8) isSettled = true;
    }
  }
  const inverse = inverseOf(last.normal, size);
  if (!inverse || !p.every(Number.isFinite))
    return fail({ code: 'power/coast-down-no-fit', facts: { samples } });
  const { covariance: all, t } = rollErrors(rolls, last, inverse, shared);
  const covariance = [0, 1, 2].map((r) => [0, 1, 2].map((c) => all[r * size + c] as number));
  const half = (i: 0 | 1 | 2) => t * Math.sqrt(Math.max(0, covariance[i]?.[i] as number));
  const [level, b, c] = p as [number, number, number];
  const perWay = isBothWays ? { s: p[3] as number, t: p[4] as number } : null;
  const a = perWay && c > 0.05 ? level - perWay.t ** 2 / (4 * c) : level;
  const forceAt = (v: number) => {
    const g = [1, v, v * v];
    let sum = 0;
    for (let r = 0; r < 3; r++)
      for (let k = 0; k < 3; k++) sum += (g[r] as number) * (g[k] as number) * (covariance[r]?.[k] as number);
    return { force: a + v * (b + v * c), half: t * Math.sqrt(Math.max(0, sum)) };
  };
  // Rolls that contradict each other, or a foot on the brake, leave a force that nobody knows.
  const speeds = rolls.map((r) => (r.value[0] as number) + (r.value.at(-1) as number));
  const middle = forceAt(speeds.reduce((sum, v) => sum + v / 2, 0) / rolls.length);
  if (c + half(2) < 0 || !(middle.half < mostUnknown * middle.force))
    return fail({ code: 'power/coast-down-no-fit', facts: { samples } });
  const rolled = {
    from: Math.min(...rolls.map((r) => r.value.at(-1) as number)),
    to: Math.max(...rolls.map((r) => r.value[0] as number)),
  };
  return ok({
    a,
    b,
    c,
    covariance,
    half: { a: half(0), b: half(1), c: half(2) },
    forceAt,
    scatter: Math.sqrt(last.squares / Math.max(1, samples - size)),
    mass,
    rolls: rolls.length,
    rolled,
    ownForces: rollForces(rolls, last, shared, (rolled.from + rolled.to) / 2),
    strays: rolls.map(({ time }, n) => ({ time, residual: last.residuals[n] as Float64Array })),
    perWay,
  });
}

function damped(normal: Matrix, size: number, damping: number): Matrix {
  const out = Float64Array.from(normal);
  for (let i = 0; i < size; i++) out[i * size + i] = (out[i * size + i] as number) * (1 + damping);
  return out;
}

function inverseOf(normal: Matrix, size: number): Matrix | null {
  const out = new Float64Array(size * size);
  for (let c = 0; c < size; c++) {
    const unit = new Float64Array(size);
    unit[c] = 1;
    const column = solveNormal(normal, unit, size);
    if (!column) return null;
    for (let r = 0; r < size; r++) out[r * size + c] = column[r] as number;
  }
  return out;
}

export const explainCoastDown: FormulaCard = {
  formula:
    '(m + Iw / r^2) dv/dt = -(a + b v + c v^2 ± (s + t v)), speed trace fitted by least squares, a less t^2 / 4c',
  inputs: [
    input('v', 'm/s', 'road speed while rolling in neutral'),
    input('m', 'kg', 'mass as driven'),
    input('Iw', 'kg m^2', 'inertia of all wheels'),
    input('r', 'm', 'rolling radius'),
    input('s', 'N', 'force of the slope, told once rolls go both ways'),
    input('t', 'N s/m', 'what steady wind adds by speed, told once rolls go both ways'),
  ],
  source: 'equation of motion; form of the force as in 40 CFR 1066',
  validRange: 'level road, still air or both directions together; speed loss of 8 m/s or more',
};
