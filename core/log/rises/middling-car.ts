/** Drag of a middling car over its mass at a road speed [m/s2]: 0.15 of rolling, 3e-4 v^2 of air (common practice). */
export const dragOf = (v: number) => 0.15 + 3e-4 * v * v;

/** Inertia of an engine over mass of a car, 0.2 kg m2 and 1,350 kg: a low gear accelerates both (common practice). */
const inertiaOverMass = 1.5e-4;

/** A heavy flywheel in a light car, 0.26 kg m2 and 1,150 kg (common practice). */
const mostInertiaOverMass = 2.3e-4;

/** Engine speed over road speed in first gear [rad/m], in which the engine's inertia weighs most (common practice). */
const firstGear = 33;

/**
 * By how much the torque in first gear may be more, beside that in a higher one, than torqueShare makes of it: 1 or more.
 *
 * @param low, high  engine speed over road speed [rad/m]
 */
export function inertiaAllowance(low: number, high: number): number {
  if (low < firstGear) return 1;
  const untold = (ratio: number) =>
    (1 + mostInertiaOverMass * ratio * ratio) / (1 + inertiaOverMass * ratio * ratio);
  return Math.max(1, untold(low) / untold(high));
}

/**
 * Torque at the engine over force per mass at the wheels [m], up to a factor of the car's own.
 *
 * @param ratio  engine speed over road speed [rad/m]
 */
export function torqueShare(ratio: number): number {
  return (1 + inertiaOverMass * ratio * ratio) / ratio;
}
