import { engine, spray } from './hatch.ts';

const gasConstant = 287.05;
const vapourGasRatio = { water: 28.96 / 18.02, methanol: 28.96 / 32.04 };
const airHeat = 1005;

/** Value of a polyline at x, held flat beyond its ends. */
export function along(points: readonly (readonly [number, number])[], x: number): number {
  let [x0, y0] = points[0] ?? [0, 0];
  if (x <= x0) return y0;
  for (const [x1, y1] of points) {
    if (x < x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
    x0 = x1;
    y0 = y1;
  }
  return y0;
}

export const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x));

/** What the engine is fed with at one instant. */
export type Feed = {
  readonly engineSpeed_rpm: number;
  /** Absolute [Pa]. */
  readonly manifoldPressure: number;
  readonly ambientPressure: number;
  /** Before the nozzle [K]. */
  readonly chargeTemperature: number;
  readonly lambda: number;
  readonly sparkAdvance_deg: number;
  /** Fluid leaving the nozzle [kg/s]. */
  readonly fluid: number;
};

/** What the engine makes of it. */
export type Work = {
  /** At the clutch, engine inertia not yet paid [N m]. */
  readonly torque: number;
  readonly airFlow: number;
  readonly fuelFlow: number;
  /** Fluid over fuel by mass. */
  readonly fluidRatio: number;
  /** Fuel trim that the alcohol's own air demand asks for. */
  readonly trim: number;
  /** Drop of the charge's temperature by evaporation before the valve [K]. */
  readonly sprayCooling: number;
};

/** Spark advance of most torque, dry [deg before top]; a fuller cylinder burns faster. */
export function bestSpark_deg(engineSpeed_rpm: number, boost: number): number {
  return 16 + 2.1e-3 * engineSpeed_rpm - 2e-5 * boost;
}

/**
 * Spark advance at which knock begins [deg]. Boost and heat pull it back, fluid pushes it ahead; the sizes are
 * invented but keep the usual order.
 */
export function knockSpark_deg(engineSpeed_rpm: number, boost: number, intake: number, fluidRatio: number) {
  return bestSpark_deg(engineSpeed_rpm, boost) - 3.6 - 6e-5 * boost - 0.12 * (intake - 308) + 24 * fluidRatio;
}

/** Torque, air and fuel of the invented engine at one instant. */
export function workOf(feed: Feed): Work {
  const speed = feed.engineSpeed_rpm;
  const boost = feed.manifoldPressure - feed.ambientPressure;
  const warmed = feed.chargeTemperature + engine.portHeating * (engine.portWall - feed.chargeTemperature);
  const volumetric = along(engine.volumetric, speed);
  const fill = (temperature: number) =>
    (volumetric * engine.displacement * feed.manifoldPressure) / (gasConstant * temperature);
  const cyclesPerSecond = speed / 120;

  // The spray cools the charge and takes room in it; both depend on the air it meets, so two rounds settle it.
  let airPerCycle = fill(warmed);
  let sprayCooling = 0;
  for (let round = 0; round < 2; round++) {
    const evaporated =
      (spray.evaporatedBeforeValve * feed.fluid) / Math.max(1e-9, airPerCycle * cyclesPerSecond);
    sprayCooling = (evaporated * spray.latentHeat) / airHeat;
    const moles =
      evaporated *
      (spray.methanolShare * vapourGasRatio.methanol + (1 - spray.methanolShare) * vapourGasRatio.water);
    airPerCycle = fill(warmed - (1 - engine.portHeating) * sprayCooling) / (1 + moles);
  }

  const airFlow = airPerCycle * cyclesPerSecond;
  const airForFuel = airFlow / feed.lambda;
  const methanolAir = Math.min(0.5 * airForFuel, feed.fluid * spray.methanolShare * engine.stoichMethanol);
  const fuelFlow = (airForFuel - methanolAir) / engine.stoichPetrol;
  const fluidRatio = feed.fluid / Math.max(1e-9, fuelFlow);

  const before = bestSpark_deg(speed, boost) + engine.burnDelay * fluidRatio - feed.sparkAdvance_deg;
  const sparkShare = 1 - engine.sparkCurvature * before * before;
  const richShare =
    feed.lambda > 1
      ? 1 / feed.lambda
      : 1 -
        engine.lambdaCurvature *
          (feed.lambda - engine.lambdaBest - engine.lambdaBestPerFluid * fluidRatio) ** 2;
  const gross =
    (engine.indicatedEfficiency * sparkShare * richShare * airPerCycle * engine.heatPerAir) /
    engine.displacement;
  const friction = 0.55e5 + 0.15e5 * (speed / 1000);
  const backPressure = 0.4e5 * (speed / 6000) ** 2 * Math.max(0.2, boost / 1e5);
  const pumping = backPressure + Math.max(0, feed.ambientPressure - feed.manifoldPressure);
  return {
    torque: ((gross - friction - pumping) * engine.displacement) / (4 * Math.PI),
    airFlow,
    fuelFlow,
    fluidRatio,
    trim: -methanolAir / airForFuel,
    sprayCooling,
  };
}
