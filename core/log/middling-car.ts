/** Drag of a middling car over its mass at a road speed [m/s2]: 0.15 of rolling, 3e-4 v^2 of air (common practice). */
export const dragOf = (v: number) => 0.15 + 3e-4 * v * v;

/** Inertia of an engine over mass of a car, 0.2 kg m2 and 1,350 kg: a low gear accelerates both (common practice). */
const inertiaOverMass = 1.5e-4;

/**
 * Torque at the engine over force per mass at the wheels [m], up to a factor of the car's own.
 *
 * @param ratio  engine speed over road speed [rad/m]
 */
export function torqueShare(ratio: number): number {
  return (1 + inertiaOverMass * ratio * ratio) / ratio;
}
