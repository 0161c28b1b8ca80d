import { type Kind, kinds } from '../../units/index.ts';

/** Exponents of kg, m, s and K. Angles, shares and lambda are plain numbers. */
export type Dimension = readonly [kg: number, m: number, s: number, K: number];

export const plain: Dimension = [0, 0, 0, 0];

const ofKind: Readonly<Record<Kind, Dimension>> = {
  time: [0, 0, 1, 0],
  length: [0, 1, 0, 0],
  speed: [0, 1, -1, 0],
  acceleration: [0, 1, -2, 0],
  mass: [1, 0, 0, 0],
  area: [0, 2, 0, 0],
  volume: [0, 3, 0, 0],
  angle: plain,
  engineSpeed: [0, 0, -1, 0],
  pressure: [1, -1, -2, 0],
  temperature: [0, 0, 0, 1],
  temperatureDifference: [0, 0, 0, 1],
  power: [1, 2, -3, 0],
  torque: [1, 2, -2, 0],
  force: [1, 1, -2, 0],
  forcePerSpeed: [1, 0, -1, 0],
  forcePerSpeedSquared: [1, -1, 0, 0],
  inertia: [1, 2, 0, 0],
  density: [1, -3, 0, 0],
  volumeFlow: [0, 3, -1, 0],
  massFlow: [1, 0, -1, 0],
  share: plain,
  lambda: plain,
  // Volts stand apart from every mechanical unit; as plain numbers they would add to shares. No formula of the
  // trade mixes them, so a base of their own is not worth a fifth exponent: they only scale.
  voltage: plain,
  energyPerMass: [0, 2, -2, 0],
  massPerEnergy: [0, -2, 2, 0],
  number: plain,
};

/** What a kind of quantity is measured in. */
export function dimensionOf(kind: Kind): Dimension {
  return ofKind[kind];
}

/** Kinds that share their units with one that a formula means far more often. */
const seldom: ReadonlySet<Kind> = new Set<Kind>([
  'angle',
  'share',
  'lambda',
  'voltage',
  'forcePerSpeed',
  'temperatureDifference',
]);

/** The kind that is measured in this text of dimensionText; null where none is. */
export function kindMeasuredIn(text: string): Kind | null {
  const fits = (kind: Kind) => !seldom.has(kind) && dimensionText(ofKind[kind]) === text;
  return kinds.find(fits) ?? null;
}

/** `a` times `b` to the power of `exponent`. */
export function combine(a: Dimension, b: Dimension, exponent: number): Dimension {
  return [a[0] + exponent * b[0], a[1] + exponent * b[1], a[2] + exponent * b[2], a[3] + exponent * b[3]];
}

export function isSame(a: Dimension, b: Dimension): boolean {
  // Halves come from square roots; anything finer is a rounding error.
  return a.every((value, i) => Math.abs(value - (b[i] ?? 0)) < 1e-9);
}

/** `kg m^-1 s^-2`, for a message; `1` for a plain number. */
export function dimensionText(dimension: Dimension): string {
  const names = ['kg', 'm', 's', 'K'];
  const parts = dimension.flatMap((exponent, i) => {
    if (Math.abs(exponent) < 1e-9) return [];
    return [exponent === 1 ? `${names[i]}` : `${names[i]}^${Number(exponent.toFixed(3))}`];
  });
  return parts.length === 0 ? '1' : parts.join(' ');
}
