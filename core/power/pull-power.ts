import type { Note } from '../result/index.ts';

/**
 * Power of one pull over engine speed. Arrays have one length, engine speed rises strictly.
 * wheelPower is at the tyre's contact, enginePower at the crank (drivetrain loss and rotating inertia given
 * back); both corrected to `correction` where it is not 'none'.
 */
export type PullPower = {
  readonly engineSpeed_rad_s: Float64Array;
  /** [W] */
  readonly wheelPower: Float64Array;
  /** [W] */
  readonly enginePower: Float64Array;
  /** Standard error of wheelPower from this pull's own speed signal, noise and smoothing [W]. */
  readonly wheelPowerError: Float64Array;
  /** Standard uncertainty common to all pulls of the car, from mass, load and radius as entered [W]. */
  readonly systematicError: Float64Array;
  /** Log clock [s] at each point, so that other channels can be read at the same engine speed. */
  readonly time: Float64Array;
  /** Full width at half height of the smoothing kernel in the middle of the pull [s]. */
  readonly bandwidth: number;
  readonly basis: 'engine-speed' | 'vehicle-speed' | 'torque-channel' | 'power-channel';
  readonly correction: { readonly standard: CorrectionStandard; readonly factor: number };
  readonly notes: readonly Note[];
};

export const correctionStandards = ['none', 'SAE J1349', 'ISO 1585', 'DIN 70020'] as const;
export type CorrectionStandard = (typeof correctionStandards)[number];
