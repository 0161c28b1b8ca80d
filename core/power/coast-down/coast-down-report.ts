import { channelOf, countedOnAt } from '../../log/index.ts';
import { type Note, ok, type Result } from '../../result/index.ts';
import type { Car } from '../car/car.ts';
import { wheelMass } from '../car/wheel-mass.ts';
import { numbersWithin } from '../numbers-within.ts';
import { inputUncertainty, standardGravity } from '../practice.ts';
import { type CoastDownFit, fitCoastDown, type LoggedRoll, rolledSpeedOf, wayRemark } from './coast-down.ts';
import type { Coefficients } from './coast-down-time.ts';
import { heldBack } from './held-back.ts';
import { isInGear } from './in-neutral.ts';
import { logsDiffer } from './logs-differ.ts';

/** A roll as a person finds it again in the log. */
export type CoastDownRoll = {
  readonly from_s: number;
  readonly to_s: number;
  /** What a person reads in the file is earlier by this [s], where the file's clock started anew. */
  readonly countedOn_s: number;
  /** Where it begins and where it ends [m/s]. */
  readonly fromSpeed: number;
  readonly toSpeed: number;
};

/** A fit as a person is told it, with what the car file takes of it. */
export type CoastDownReport = {
  /** As the car file holds it, rounded to what a roll can tell. */
  readonly roadLoad: {
    readonly a_N: number;
    readonly b_N_s_m: number;
    readonly c_N_s2_m2: number;
    /** Half of the 95 % interval of the force at 100 km/h, where half of a pull's speeds lie. */
    readonly half_percent: number;
  };
  /** Halves of the 95 % intervals of the coefficients. */
  readonly half: Coefficients;
  /** Force with half of its 95 % interval at 50, 100 and 150 km/h [m/s, N], and whether any roll went so fast or slow. */
  readonly force: readonly {
    readonly speed: number;
    readonly force: number;
    readonly half: number;
    readonly isRolled: boolean;
  }[];
  /** Mass with turning wheels that the fit used [kg]. */
  readonly mass: number;
  readonly rolls: number;
  readonly notes: readonly Note[];
};

const speeds = [50, 100, 150].map((v) => v / 3.6);
/** Where half of a pull's speeds lie (common practice), 100 km/h [m/s]. */
const middleSpeed = 100 / 3.6;
/** Two-sided 95 % of the normal distribution. */
const z95 = 1.96;

/** When each roll was and how fast, in the order given. */
export function rollsTold(rolls: readonly LoggedRoll[]): CoastDownRoll[] {
  const speedOf = rolledSpeedOf(rolls);
  return rolls.map(({ log, from, to }) => {
    const values = numbersWithin(speedOf(log)?.values ?? new Float64Array(), from, to);
    return {
      from_s: log.time[from] ?? Number.NaN,
      to_s: log.time[Math.min(to, log.time.length) - 1] ?? Number.NaN,
      countedOn_s: countedOnAt(log, from),
      fromSpeed: values[0] ?? Number.NaN,
      toSpeed: values.at(-1) ?? Number.NaN,
    };
  });
}

/**
 * Road load of rolls with all that is to be said of it: `fitCoastDown`, rounded as the car file keeps it.
 *
 * Rolls one way hold the slope of a road called level (practice.ts): the intervals of A and of each force are wider by
 * it, since the traces can't tell it. Wind is in none of them.
 *
 *   half^2 = (fit)^2 + (1.96 u(s) m g)^2        JCGM 100:2008 (GUM), equation 10
 *
 * Errors: those of fitCoastDown.
 */
export function coastDownReport(rolls: readonly LoggedRoll[], car: Car): Result<CoastDownReport> {
  const fit = fitCoastDown(rolls, car);
  if (!fit.ok) return fit;
  const { a, b, c, half, mass, rolled, perWay } = fit.value;
  const slope = perWay ? 0 : z95 * inputUncertainty.gradeAssumed * car.mass_kg * standardGravity;
  const forceAt = (v: number) => {
    const told = fit.value.forceAt(v);
    return { force: told.force, half: Math.hypot(told.half, slope) };
  };
  const middle = forceAt(middleSpeed);
  const force = speeds.map((speed) => ({
    speed,
    ...forceAt(speed),
    isRolled: speed >= rolled.from && speed <= rolled.to,
  }));
  return ok({
    roadLoad: {
      a_N: Number(a.toFixed(2)),
      b_N_s_m: Number(b.toFixed(4)),
      c_N_s2_m2: Number(c.toFixed(5)),
      half_percent: Number(((100 * middle.half) / middle.force).toFixed(2)),
    },
    half: { ...half, a: Math.hypot(half.a, slope) },
    force,
    mass,
    rolls: fit.value.rolls,
    notes: [
      wayRemark(fit.value, car),
      ...logNotes(rolls, fit.value),
      ...(force.every((at) => at.isRolled)
        ? []
        : [{ code: 'power/coast-down-beyond', facts: rolled } as const]),
      ...wheelMass(car).notes,
    ],
  });
}

/** What the logs hold and how they go together. */
function logNotes(rolls: readonly LoggedRoll[], fit: CoastDownFit): Note[] {
  const { ownForces, forceAt, rolled, strays, mass } = fit;
  const speedOf = rolledSpeedOf(rolls);
  const kinds = new Set(rolls.map((r) => speedOf(r.log)?.quantity));
  const isNeutralKnown = rolls.every((r) => channelOf(r.log, 'engineSpeed') !== undefined);
  const differ = logsDiffer(rolls, ownForces, forceAt((rolled.from + rolled.to) / 2).force);
  const inGear = rolls.flatMap((roll): Note[] => {
    const { log } = roll;
    const from_s = (log.time[roll.from] as number) - countedOnAt(log, roll.from);
    return isInGear(log, speedOf(log)?.values ?? new Float64Array(), roll)
      ? [{ code: 'power/coast-down-not-neutral', facts: { file: log.file, from_s } }]
      : [];
  });
  const held = strays.flatMap((stray, n): Note[] => {
    const found = heldBack(stray);
    const roll = rolls[n];
    if (!found || !roll) return [];
    const countedOn = countedOnAt(roll.log, roll.from);
    const [from_s, to_s] = [found.from_s - countedOn, found.to_s - countedOn];
    const { file } = roll.log;
    return [
      { code: 'power/coast-down-held-back', facts: { file, from_s, to_s, force: found.slowing * mass } },
    ];
  });
  return [
    ...inGear,
    ...held,
    ...(differ ? [differ] : []),
    ...(kinds.size > 1 ? [{ code: 'power/coast-down-two-speeds', facts: {} } as const] : []),
    ...(isNeutralKnown ? [] : [{ code: 'power/coast-down-neutral-untold', facts: {} } as const]),
  ];
}
