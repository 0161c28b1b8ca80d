import type { Car } from './car/car.ts';
import { inputUncertainty, practice } from './practice.ts';
import { loadAt, type RoadLoad } from './road-load.ts';

/**
 * Standard uncertainty of wheel power that all pulls of a car share [W]: what mass, road load, slope and speed
 * scale as entered are worth, each moved by one standard uncertainty, summed as squares.
 *
 *   u^2 = sum (dP/dx_i u_i)^2
 *
 * @param scale  relative standard uncertainty of speed; acceleration scales with it
 * @param mass   with the wheels' share [kg]
 * @param v, a   road speed [m/s] and acceleration [m/s^2]
 *
 * Source: JCGM 100:2008 (GUM), equation 10; sizes of the inputs are common practice (practice.ts).
 */
export function systematicError(
  car: Car,
  load: RoadLoad,
  scale: number,
  mass: number,
  v: number,
  a: number,
): number {
  // The 95 % interval of the mass is entered by its half.
  const massError =
    car.massUncertainty_kg === null ? inputUncertainty.mass * car.mass_kg : car.massUncertainty_kg / 1.96;
  const wheels = car.wheelInertia_kg_m2 === null ? practice.wheelInertiaShare * car.mass_kg * a * v : 0;
  const rollingPower = (load.a + load.b * v) * v;
  const dragPower = load.c * v * v * v;
  const perSpeed = 2 * mass * a + loadAt(load, v) + v * (load.b + 2 * load.c * v);
  // Rolling and slope go with the mass, and so does a coast-down: its force was worked out with it.
  const withMass =
    load.slopeForce * v + (load.uncertainty.whole > 0 ? rollingPower + dragPower : rollingPower);
  const byMass = massError * a * v + (massError / car.mass_kg) * withMass;
  const byRolling = load.uncertainty.rolling * rollingPower;
  const byDrag = load.uncertainty.drag * dragPower;
  const byLoad = load.uncertainty.whole * (rollingPower + dragPower);
  const bySlope = load.uncertainty.slopeForce * v;
  const byScale = perSpeed * v * scale;
  // Math.hypot guards against overflow that watts never reach, at twenty times the cost.
  return Math.sqrt(
    byMass * byMass +
      wheels * wheels +
      byRolling * byRolling +
      byDrag * byDrag +
      byLoad * byLoad +
      bySlope * bySlope +
      byScale * byScale,
  );
}

/**
 * The same where engine speed follows from gear and tyre alone: the whole curve may stand at speeds that are off by a
 * share, which is worth most where it is steep.
 *
 *   u'^2 = u^2 + (dP/dw w share)^2
 *
 * Source: JCGM 100:2008 (GUM), equation 10.
 */
export function withShift(
  error: Float64Array,
  engineSpeed: Float64Array,
  power: Float64Array,
  share: number,
): Float64Array {
  if (share === 0) return error;
  return error.map((u, i) =>
    Math.hypot(u, slopeAt(engineSpeed, power, i) * (engineSpeed[i] as number) * share),
  );
}

/**
 * The same where a reading comes late by so many seconds: it is off by what it moved by meanwhile.
 *
 *   u'^2 = u^2 + (dP/dt lag)^2
 *
 * Source: JCGM 100:2008 (GUM), equation 10.
 */
export function withLag(
  error: Float64Array,
  time: Float64Array,
  power: Float64Array,
  lag: number,
): Float64Array {
  return lag === 0 ? error : error.map((u, i) => Math.hypot(u, slopeAt(time, power, i) * lag));
}

/** dy/dx between the neighbours of a point. */
function slopeAt(xs: Float64Array, ys: Float64Array, i: number): number {
  const [a, b] = [Math.max(0, i - 1), Math.min(ys.length - 1, i + 1)];
  return ((ys[b] as number) - (ys[a] as number)) / ((xs[b] as number) - (xs[a] as number));
}
