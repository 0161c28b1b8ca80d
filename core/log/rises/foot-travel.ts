/**
 * How air or torque follows a foot that goes down to the stop or leaves it, as a share of the whole change over time
 * from the first move of the foot.
 */
export type FootTravel = {
  /** From the first move to the last [s]. */
  readonly travel_s: number;
  /** From the first move to where the foot is all but down, or has all but begun to lift [s]. */
  readonly met_s: number;
  /** Which plate law and lag of the manifold it was made with: these belong to the car, not to the foot. */
  readonly car: number;
  /** Share at each `travelStep_s`, and its integral [s]. */
  readonly share: Float64Array;
  readonly integral: Float64Array;
  /** The share as a charger follows it, and its integral [s]. */
  readonly late: Float64Array;
  readonly lateIntegral: Float64Array;
  /** When the share passes one half [s]. */
  readonly half_s: number;
};

export const travelStep_s = 0.01;
const length = 200;

/** Even, soft at both ends, and quick first with the rest squeezed (common practice: what feet do in logs). */
const moves: readonly ((s: number) => number)[] = [
  (s) => s,
  (s) => (1 - Math.cos(Math.PI * s)) / 2,
  (s) => (s < 0.3 ? 2 * s : 0.6 + (4 / 7) * (s - 0.3)),
];
/** A foot is down within this share of its travel from the stop: the last of it changes nothing (common practice). */
const nearStop = 0.03;
const travels_s = [0.06, 0.12, 0.18, 0.25, 0.32, 0.39, 0.46, 0.53, 0.6];
/**
 * Air through the plate over the pedal: near its stop the last travel hardly counts. `power` is that of what is
 * left to open; a law with `until` is even and done at that share of the travel (common practice).
 */
const laws: readonly ({ readonly power: number } | { readonly until: number })[] = [
  { power: 1.2 },
  { power: 1.6 },
  { power: 2 },
  { power: 2.6 },
  { until: 0.67 },
];
/**
 * A manifold fills with 1.5 times the displacement at 2,000 to 4,500 rpm: 2 V_m / (V_d n); a damped hose or a filter of
 * the logger adds to it (common practice).
 */
const lags_s = [0.03, 0.05, 0.07, 0.09, 0.15];
/** A charger at low engine speed (common practice). */
const chargerLag_s = 0.35;

export const carCount = laws.length * lags_s.length;

/** Three of the laws at one lag. */
export const middlingCars: readonly number[] = [0, 2, 4].map((law) => law * lags_s.length + 1);

const made = new Map<'down' | 'lift', readonly FootTravel[]>();

/** The travels that are tried, for a foot that goes down or that lifts; worked out when first asked for. */
export function footTravels(way: 'down' | 'lift'): readonly FootTravel[] {
  const known = made.get(way);
  if (known) return known;
  const built = build(way);
  made.set(way, built);
  return built;
}

function build(way: 'down' | 'lift'): FootTravel[] {
  const list: FootTravel[] = [];
  for (const [l, law] of laws.entries())
    for (const [k, lag] of lags_s.entries())
      for (const travel of travels_s)
        for (const move of moves) {
          const open = (pedal: number) => openShare(law, pedal);
          const at = (s: number) => (way === 'down' ? open(move(s)) : 1 - open(1 - move(s)));
          list.push({
            ...follow((s) => at(Math.min(1, s)), travel, lag, l * lags_s.length + k),
            met_s: travel * shareUntil(move, way === 'down' ? 1 - nearStop : nearStop),
          });
        }
  return list;
}

/** Share of its time that a move takes to get so far. */
function shareUntil(move: (s: number) => number, far: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (move(middle) < far) low = middle;
    else high = middle;
  }
  return high;
}

function openShare(law: (typeof laws)[number], pedal: number): number {
  return 'power' in law ? 1 - (1 - pedal) ** law.power : Math.min(1, pedal / law.until);
}

function follow(
  at: (s: number) => number,
  travel_s: number,
  lag_s: number,
  car: number,
): Omit<FootTravel, 'met_s'> {
  const share = new Float64Array(length);
  const integral = new Float64Array(length);
  const late = new Float64Array(length);
  const lateIntegral = new Float64Array(length);
  const fine = travelStep_s / 5;
  let [a, b, ia, ib] = [0, 0, 0, 0];
  let half_s = 0;
  for (let i = 1; i < length; i++) {
    for (let k = 0; k < 5; k++) {
      a += ((at(((i - 1) * travelStep_s + (k + 0.5) * fine) / travel_s) - a) * fine) / lag_s;
      b += ((a - b) * fine) / chargerLag_s;
      ia += a * fine;
      ib += b * fine;
    }
    share[i] = a;
    integral[i] = ia;
    late[i] = b;
    lateIntegral[i] = ib;
    if (a < 0.5) half_s = i * travelStep_s;
  }
  return { travel_s, car, share, integral, late, lateIntegral, half_s };
}

/** Value of one of the courses at a time from the first move; nothing before it, straight on beyond its end. */
export function courseAt(course: Float64Array, t: number): number {
  if (t <= 0) return 0;
  const x = t / travelStep_s;
  const i = Math.min(length - 2, Math.floor(x));
  const a = course[i] ?? 0;
  return a + (x - i) * ((course[i + 1] ?? 0) - a);
}
