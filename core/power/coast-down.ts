import { type Channel, channelOf, type Log } from '../log/index.ts';
import { fail, ok, type Result } from '../result/index.ts';
import type { Car } from './car.ts';
import type { Coefficients } from './coast-down-time.ts';
import { type FormulaCard, input } from './explain.ts';
import { type Matrix, solveNormal } from './normal-equations.ts';
import { type SpeedSignal, speedSignal } from './speed-signal.ts';
import { wheelMass } from './wheel-mass.ts';

/** Samples of one roll, half open, in the log's own indices. */
export type CoastDownWindow = { readonly from: number; readonly to: number };

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
};

/**
 * Road load from rolling in neutral.
 *
 *   M dv/dt = -(a + b v + c v^2),  M = m + Iw / r^2
 *
 * The whole speed trace is fitted, not its slope: coefficients and the start speed of each roll are moved until the
 * integrated speed lies closest to the samples (Gauss-Newton with exact sensitivities). Several windows are fitted
 * with one set of coefficients; rolls in both directions let slope and steady wind cancel, one alone takes them in.
 *
 * @param windows  one roll or several, each in neutral from first to last sample
 * @returns        coefficients in SI with covariance; intervals widened where neighbouring errors go together
 *
 * Valid:  speed falls by 8 m/s or more; b may come out negative, as it does in published data.
 * Errors: power/no-speed, power/coast-down-too-short, power/coast-down-not-slowing, power/coast-down-no-fit.
 * Source: equation of motion; form of F as in 40 CFR 1066.
 * Check:  120.19 N, 2.859 N s/m, 0.2716 N s^2/m^2, 1956.7 kg: from 75 to 15 mph in 196.69 s.
 */
export function fitCoastDown(
  log: Log,
  windows: CoastDownWindow | readonly CoastDownWindow[],
  car: Car,
): Result<CoastDownFit> {
  const channel = channelOf(log, 'gpsSpeed') ?? channelOf(log, 'vehicleSpeed');
  if (!channel) return fail({ code: 'power/no-speed', facts: {} });
  const list = 'from' in windows ? [windows] : windows;
  const rolls: SpeedSignal[] = [];
  for (const window of list) {
    const roll = fallingSignal(log, channel, window);
    const seconds = roll ? (roll.time.at(-1) ?? 0) - (roll.time[0] ?? 0) : 0;
    const speedDrop = roll ? (roll.value[0] ?? 0) - (roll.value.at(-1) ?? 0) : 0;
    if (roll && speedDrop < 0) return fail({ code: 'power/coast-down-not-slowing', facts: window });
    if (!roll || roll.time.length < 12 || speedDrop < 8) {
      const samples = roll?.time.length ?? 0;
      return fail({ code: 'power/coast-down-too-short', facts: { samples, seconds, speedDrop } });
    }
    rolls.push(roll);
  }
  const mass = car.mass_kg + wheelMass(car).mass;
  return fitRolls(rolls, mass);
}

/** Rising is what the reader of speed signals knows: a falling one is read upside down. */
function fallingSignal(log: Log, channel: Channel, window: CoastDownWindow): SpeedSignal | null {
  const values = channel.values.map((v) => -v);
  const signal = speedSignal(log, { ...channel, values }, window.from, window.to);
  return signal && { ...signal, value: signal.value.map((v) => -v) };
}

function fitRolls(rolls: readonly SpeedSignal[], mass: number): Result<CoastDownFit> {
  const samples = rolls.reduce((sum, r) => sum + r.time.length, 0);
  const size = 3 + rolls.length;
  let p = [0.012 * 9.8 * mass, 0, 0.4, ...rolls.map((r) => r.value[0] as number)];
  let last = sumsOf(rolls, p, mass);
  let damping = 1e-3;
  let isSettled = false;
  for (let round = 0; round < 60 && !isSettled; round++) {
    const step = solveNormal(damped(last.normal, size, damping), last.right, size);
    if (!step) break;
    const next = p.map((x, i) => x + (step[i] as number));
    const sums = sumsOf(rolls, next, mass);
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
  const variance = last.squares / Math.max(1, samples - size);
  const inverse = inverseOf(last.normal, size);
  if (!inverse || !p.every(Number.isFinite))
    return fail({ code: 'power/coast-down-no-fit', facts: { samples } });
  const spread = variance * Math.max(1, (1 + last.correlation) / Math.max(0.02, 1 - last.correlation));
  const covariance = [0, 1, 2].map((r) => [0, 1, 2].map((c) => spread * (inverse[r * size + c] as number)));
  const half = (i: 0 | 1 | 2) => 1.96 * Math.sqrt(Math.max(0, covariance[i]?.[i] as number));
  const [a, b, c] = p as [number, number, number];
  const forceAt = (v: number) => {
    const g = [1, v, v * v];
    let sum = 0;
    for (let r = 0; r < 3; r++)
      for (let k = 0; k < 3; k++) sum += (g[r] as number) * (g[k] as number) * (covariance[r]?.[k] as number);
    return { force: a + v * (b + v * c), half: 1.96 * Math.sqrt(Math.max(0, sum)) };
  };
  return ok({
    a,
    b,
    c,
    covariance,
    half: { a: half(0), b: half(1), c: half(2) },
    forceAt,
    scatter: Math.sqrt(variance),
    mass,
    rolls: rolls.length,
  });
}

/** Normal equations, residual squares and the correlation of neighbouring residuals at parameters p. */
function sumsOf(rolls: readonly SpeedSignal[], p: readonly number[], mass: number) {
  const size = 3 + rolls.length;
  const normal: Matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  let squares = 0;
  let neighbours = 0;
  rolls.forEach((roll, k) => {
    // v, then dv/da, dv/db, dv/dc, dv/dv0.
    let state = [p[3 + k] as number, 0, 0, 0, 1];
    let before = 0;
    for (let i = 0; i < roll.time.length; i++) {
      if (i > 0) state = advance(state, p, mass, (roll.time[i] as number) - (roll.time[i - 1] as number));
      const r = (roll.value[i] as number) - (state[0] as number);
      squares += r * r;
      if (i > 0) neighbours += r * before;
      before = r;
      const at = [0, 1, 2, 3 + k];
      for (let x = 0; x < 4; x++) {
        const g = state[x + 1] as number;
        right[at[x] as number] = (right[at[x] as number] as number) + g * r;
        for (let y = 0; y < 4; y++) {
          const cell = (at[x] as number) * size + (at[y] as number);
          normal[cell] = (normal[cell] as number) + g * (state[y + 1] as number);
        }
      }
    }
  });
  return { normal, right, squares, correlation: squares > 0 ? Math.max(0, neighbours / squares) : 0 };
}

/** Fourth-order Runge-Kutta over dt in steps of 0.25 s or less. */
function advance(state: readonly number[], p: readonly number[], mass: number, dt: number): number[] {
  const [a, b, c] = p as [number, number, number];
  const slope = (s: readonly number[]): number[] => {
    const [v, sa, sb, sc, s0] = s as [number, number, number, number, number];
    const gradient = -(b + 2 * c * v) / mass;
    return [
      -(a + v * (b + v * c)) / mass,
      gradient * sa - 1 / mass,
      gradient * sb - v / mass,
      gradient * sc - (v * v) / mass,
      gradient * s0,
    ];
  };
  const moved = (s: readonly number[], k: readonly number[], h: number) =>
    s.map((x, i) => x + h * (k[i] as number));
  const count = Math.max(1, Math.ceil(dt / 0.25));
  const h = dt / count;
  let s = [...state];
  for (let n = 0; n < count; n++) {
    const k1 = slope(s);
    const k2 = slope(moved(s, k1, h / 2));
    const k3 = slope(moved(s, k2, h / 2));
    const k4 = slope(moved(s, k3, h));
    s = s.map(
      (x, i) =>
        x + (h / 6) * ((k1[i] as number) + 2 * (k2[i] as number) + 2 * (k3[i] as number) + (k4[i] as number)),
    );
  }
  return s;
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
  formula: '(m + Iw / r^2) dv/dt = -(a + b v + c v^2), speed trace fitted by least squares',
  inputs: [
    input('v', 'm/s', 'road speed while rolling in neutral'),
    input('m', 'kg', 'mass as driven'),
    input('Iw', 'kg m^2', 'inertia of all wheels'),
    input('r', 'm', 'rolling radius'),
  ],
  source: 'equation of motion; form of the force as in 40 CFR 1066',
  validRange: 'level road, still air or both directions together; speed loss of 8 m/s or more',
};
