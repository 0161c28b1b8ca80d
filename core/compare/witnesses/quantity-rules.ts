import type { QuantityId } from '../../log/index.ts';
import { degrees } from '../../units/index.ts';
import type { ChangeKind } from '../verdict.ts';

/**
 * What a person sets, or what takes it away: if one of these moves, the setup is another one. Channels of one
 * family say the same thing and count once.
 */
export const controls = ['boost', 'spark', 'mixture', 'fluid', 'throttle', 'petrol'] as const;
export type Control = (typeof controls)[number];

export type QuantityRule = {
  readonly control: Control | null;
  /** Smallest move that matters for power, SI; a share where `isRelative`. */
  readonly threshold: number;
  /** Usual deviation of a pull's mean between pulls of one setup, same unit as the threshold. */
  readonly usualScatter: number;
  readonly isRelative?: boolean;
  /** Level [SI] below which a share of it means nothing: the threshold stops shrinking there. */
  readonly leastLevel?: number;
};

const kPa = 1000;
const mL_min = 1e-6 / 60;

const rule = (
  control: Control | null,
  threshold: number,
  usualScatter: number,
  isRelative = false,
  leastLevel = 0,
): QuantityRule => ({ control, threshold, usualScatter, isRelative, leastLevel });

/** Thresholds and scatter are common practice throughout: what a tuner would call the same setting. */
export const quantityRules: Partial<Record<QuantityId, QuantityRule>> = {
  // 3 kPa of boost is about 1.5 % of power.
  boost: rule('boost', 3 * kPa, 1.2 * kPa),
  manifoldPressure: rule('boost', 3 * kPa, 1.2 * kPa),
  boostTarget: rule('boost', 3 * kPa, 0.5 * kPa),
  manifoldPressureTarget: rule('boost', 3 * kPa, 0.5 * kPa),
  // Half a degree is the smallest step that tuners take.
  sparkAdvance: rule('spark', degrees(0.5), degrees(0.2)),
  lambda: rule('mixture', 0.01, 0.004),
  lambdaTarget: rule('mixture', 0.008, 0.002),
  // A pump's drip of 10 mL/min, and 30 kPa of pressure in a line at rest, are no spray.
  fluidFlow: rule('fluid', 0.08, 0.03, true, (10 * mL_min) / 0.08),
  fluidPressure: rule('fluid', 0.06, 0.02, true, (30 * kPa) / 0.06),
  fluidDuty: rule('fluid', 0.04, 0.015),
  throttle: rule('throttle', 0.04, 0.01),
  pedal: rule('throttle', 0.04, 0.01),
  ethanolShare: rule('petrol', 0.03, 0.005),

  knockRetard: rule(null, degrees(0.5), degrees(0.25)),
  knockLevel: rule(null, 0.25, 0.1, true),
  intakeTemperature: rule(null, 5, 1.5),
  ambientTemperature: rule(null, 3, 1),
  coolantTemperature: rule(null, 8, 2),
  oilTemperature: rule(null, 10, 3),
  exhaustTemperature: rule(null, 20, 8),
  fuelTemperature: rule(null, 8, 2),
  airMassFlow: rule(null, 0.02, 0.008, true),
  load: rule(null, 0.02, 0.008, true),
  injectorDuty: rule(null, 0.02, 0.006),
  injectorTime: rule(null, 0.025, 0.008, true),
  fuelFlow: rule(null, 0.025, 0.008, true),
  fuelPressure: rule(null, 0.05, 0.01, true),
  fuelTrimShort: rule(null, 0.02, 0.01),
  fuelTrimLong: rule(null, 0.02, 0.01),
  wastegateDuty: rule(null, 0.05, 0.015),
  barometricPressure: rule(null, 0.5 * kPa, 0.2 * kPa),
  relativeHumidity: rule(null, 0.1, 0.03),
  batteryVoltage: rule(null, 0.5, 0.15),
  fluidLevel: rule(null, 0.1, 0.05),
};

/** The control that a declared change is expected to move. */
export const declaredControl: Record<ChangeKind, Control | null> = {
  spray: 'fluid',
  fluid: 'fluid',
  boost: 'boost',
  spark: 'spark',
  mixture: 'mixture',
  other: null,
  nothing: null,
};

/**
 * Controls that may move after a declared one without being a second change: the injection controller meters
 * by boost. Lambda under a spray is not here: see lambdaMayFollow.
 */
export const mayFollow: Record<Control, readonly Control[]> = {
  boost: ['fluid'],
  spark: [],
  mixture: [],
  fluid: [],
  throttle: ['boost', 'fluid'],
  petrol: [],
};

/** Richest that lambda goes by itself when alcohol arrives under open-loop fuelling (common practice). */
export const lambdaBySpray = 0.05;

/** Quantities shown although nobody rules on them have no entry in `quantityRules`; these are shown first. */
export const shownOrder: readonly QuantityId[] = [
  'boost',
  'manifoldPressure',
  'sparkAdvance',
  'lambda',
  'fluidFlow',
  'fluidPressure',
  'fluidDuty',
  'knockRetard',
  'intakeTemperature',
  'exhaustTemperature',
  'injectorDuty',
];
