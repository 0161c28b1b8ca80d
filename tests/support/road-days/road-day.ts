import type { Random } from '../log-generator/random.ts';

/**
 * A second, independent source of drives with known pulls, so that what finds them is not judged by the drives it
 * was tuned on: an engine by torque knots instead of a formula, a manifold that fills, a driveline that
 * shuffles, a plate law drawn per car, feet of three sorts, boxes that kick down, hills. Invented throughout.
 */
export type RoadDay = {
  /** [s] from row to row. */
  readonly step: number;
  readonly rows: readonly DayRow[];
  readonly pulls: readonly { readonly start: number; readonly end: number; readonly gear: number }[];
};

export type DayRow = {
  readonly rpm: number;
  /** [m/s] */
  readonly speed: number;
  /** 0 to 1. */
  readonly pedal: number;
  readonly plate: number;
  /** [kPa gauge] */
  readonly boost: number;
  readonly gear: number;
};

/** How the foot travels, as share over share of the time it takes. */
type Foot = (share: number) => number;
const feet: readonly Foot[] = [
  (s) => s,
  (s) => (1 - Math.cos(Math.PI * s)) / 2,
  // Quick at first, then squeezed.
  (s) => (s < 0.3 ? (s / 0.3) * 0.6 : 0.6 + (0.4 * (s - 0.3)) / 0.7),
];

export type DayOptions = {
  /** Longest time the foot takes to the floor [s]. */
  readonly slowestFoot?: number;
  /** Highest share of full torque that a gentle acceleration uses. */
  readonly strongestPart?: number;
};

const step = 0.005;
const air = 101.3;

/** One drive of an invented car: gentle driving and two to four pulls, some cut short, some over a gear change. */
export function roadDay(random: Random, options: DayOptions = {}): RoadDay {
  const { slowestFoot = 0.45, strongestPart = 0.6 } = options;
  const mass = random.between(950, 2100);
  const isTurbo = random.chance(0.75);
  // Torque of the engine at full load over engine speed, by knots [N m].
  const peak = mass * random.between(0.16, 0.3);
  const knots = isTurbo
    ? [
        0.42,
        random.between(0.6, 0.8),
        random.between(0.93, 1),
        1,
        random.between(0.92, 1),
        random.between(0.7, 0.9),
      ]
    : [0.7, random.between(0.78, 0.85), random.between(0.86, 0.93), 0.98, 1, random.between(0.85, 0.95)];
  const topRpm = random.between(5900, 8200);
  const torqueAt = (rpm: number) => {
    const x = Math.max(0, Math.min(4.999, ((rpm - 1000) / (topRpm - 1000)) * 5));
    const k = Math.floor(x);
    return peak * ((knots[k] ?? 1) + (x - k) * ((knots[k + 1] ?? 1) - (knots[k] ?? 1)));
  };
  // Metres of road per radian of the engine, by gear.
  const metres = [random.between(0.018, 0.025)];
  for (let i = 1; i < 7; i++) metres.push((metres[i - 1] ?? 1) / random.between(0.62, 0.84));
  const perRadian = (gear: number) => metres[gear - 1] ?? 0.02;
  const isAutomatic = random.chance(0.35);
  const plateShape = random.between(1.2, 2.6);
  // A manifold of 1.5 times the displacement at 2,000 to 4,500 rpm: 2 V_m / (V_d n).
  const fillTime = random.between(0.03, 0.09);
  const spoolTime = isTurbo ? random.between(0.15, 0.5) : 0.05;
  const maxBoost = isTurbo ? random.between(40, 150) : 0;
  const shuffleHz = random.between(2.5, 5);
  const shuffleSize = random.between(0, 0.012);
  const hill = random.between(0, 0.02);
  const hillLength = random.between(300, 900);

  const rows: DayRow[] = [];
  const pulls: { start: number; end: number; gear: number }[] = [];
  let speed = 0.1;
  let gear = 2;
  let pedal = 0.1;
  let fill = 0.2;
  let spool = 0;
  let way = 0;
  let rpm = 900;
  let twist = 0;
  let twistRate = 0;
  let isClutchOpen = false;
  const now = () => rows.length * step;
  const wheelRpm = (g: number) => Math.max(850, ((speed / perRadian(g)) * 30) / Math.PI);

  const advance = (brake = 0) => {
    const plate = 1 - (1 - Math.max(0, Math.min(1, pedal))) ** plateShape;
    fill += ((0.12 + 0.88 * plate - fill) * step) / fillTime;
    spool += ((plate * plate - spool) * step) / spoolTime;
    const share = isTurbo ? fill * (0.55 + 0.45 * spool) : fill;
    const drag = 12 + rpm * 0.006;
    const isCut = rpm > topRpm;
    const torque = isClutchOpen ? 0 : isCut ? -drag : torqueAt(rpm) * share - drag * (1 - share);
    const k = perRadian(gear);
    const grade = hill * Math.sin((2 * Math.PI * way) / hillLength);
    const resist = mass * 9.81 * (0.011 + grade) + 0.42 * speed * speed;
    const inertia = mass * 1.03 + 0.2 / (k * k);
    const force = isClutchOpen ? 0 : (0.88 * torque) / k;
    const acceleration = (force - (speed > 0.2 ? resist : 0)) / inertia - brake;
    speed = Math.max(0.1, speed + acceleration * step);
    way += speed * step;
    // The driveline winds up under torque and swings out.
    const wanted = isClutchOpen ? 0 : (shuffleSize * torque) / peak;
    const w = 2 * Math.PI * shuffleHz;
    twistRate += (w * w * (wanted - twist) - 2 * 0.18 * w * twistRate) * step;
    twist += twistRate * step;
    if (!isClutchOpen) rpm = wheelRpm(gear) * (1 + 0.02 * Math.max(0, torque / peak) + twist * 0.5);
    rows.push({
      rpm,
      speed,
      pedal,
      plate: Math.max(0, Math.min(1, pedal)),
      boost: fill * (air + maxBoost * spool * Math.min(1, rpm / 2800)) - air,
      gear: isClutchOpen ? 0 : gear,
    });
  };
  const wait = (seconds: number, brake = 0) => {
    const until = now() + seconds;
    while (now() < until) advance(brake);
  };
  const foot = (to: number, seconds: number, shape: Foot = feet[1] as Foot) => {
    const from = pedal;
    const count = Math.max(1, Math.round(seconds / step));
    for (let i = 1; i <= count; i++) {
      pedal = from + (to - from) * shape(i / count);
      advance();
    }
    pedal = to;
  };
  const change = (to: number, seconds: number) => {
    isClutchOpen = true;
    const from = rpm;
    const count = Math.round(seconds / step);
    for (let i = 1; i <= count; i++) {
      const s = i / count;
      rpm = from + (wheelRpm(to) - from) * s * s * (3 - 2 * s);
      advance();
    }
    gear = to;
    isClutchOpen = false;
  };
  /** Holds an engine speed in a gear for a while with a gentle foot. */
  const hold = (g: number, wantedRpm: number, seconds: number) => {
    if (gear !== g) {
      foot(0, 0.2);
      change(g, 0.5);
    }
    const wanted = (wantedRpm * Math.PI * perRadian(g)) / 30;
    let guard = 0;
    let left = seconds;
    while (left > 0 && guard++ < 30_000) {
      const aim = Math.max(0, Math.min(0.22, 0.08 + 0.06 * (wanted - speed)));
      pedal += Math.max(-0.4 * step, Math.min(0.4 * step, aim - pedal));
      advance(speed > wanted + 0.8 ? Math.min(3, 0.8 * (speed - wanted)) : 0);
      if (Math.abs(speed - wanted) < 0.8) left -= step;
    }
  };

  const g = random.int(2, 4);
  hold(g, random.between(1700, 2600), random.between(1, 4));
  const count = random.int(2, 4);
  for (let n = 0; n < count; n++) {
    if (random.chance(0.6)) {
      hold(g, random.between(1700, 2400), random.between(0.5, 3));
      // A gentle acceleration: the pedal that gives so much torque.
      const share = random.between(0.25, strongestPart);
      foot(1 - (1 - share) ** (1 / plateShape), random.between(0.3, 0.9));
      const until = now() + random.between(2, 6);
      while (now() < until && rpm < 0.8 * topRpm) advance();
      foot(0.05, random.between(0.15, 0.5));
    }
    hold(g, random.between(1800, 2900), random.between(1, 5));
    const shape = random.pick(feet);
    foot(1, random.between(0.06, slowestFoot), shape);
    if (isAutomatic && g > 2 && random.chance(0.3)) {
      wait(random.between(0.15, 0.35));
      change(g - 1, 0.25);
    }
    let start = now();
    const isCutShort = random.chance(0.15);
    const top = isCutShort ? rpm + random.between(900, 1500) : random.between(0.86, 0.98) * topRpm;
    const slowest = now() + 25;
    while ((rpm < top || now() - start < 1.1) && now() < slowest) advance();
    if (!isCutShort && gear < 5 && random.chance(0.2)) {
      pulls.push({ start, end: now() - step, gear });
      if (isAutomatic) change(gear + 1, random.between(0.12, 0.3));
      else {
        foot(0, 0.08);
        change(gear + 1, random.between(0.25, 0.5));
        foot(1, random.between(0.06, 0.25), shape);
      }
      start = now();
      const next = Math.min(0.95 * topRpm, rpm + random.between(700, 1500));
      const last = now() + 12;
      while ((rpm < next || now() - start < 1.2) && now() < last) advance();
    } else if (!isCutShort && random.chance(0.1)) {
      const limit = now() + 20;
      while (rpm < topRpm && now() < limit) advance();
      wait(random.between(0.3, 0.8));
    }
    pulls.push({ start, end: now() - step, gear });
    foot(0, random.between(0.06, 0.3), random.pick(feet));
    wait(random.between(0.4, 2));
  }
  hold(g, random.between(1800, 2600), random.between(1, 3));
  return { step, rows, pulls };
}
