import type { Note } from '../../result/index.ts';

/**
 * One full-throttle acceleration in one gear. `from` is the first sample at full throttle, `to` is one past the
 * last before the lift; times are the log's, between two rows where these lie far apart (pull-times).
 */
export type Pull = {
  readonly from: number;
  readonly to: number;
  readonly start_s: number;
  readonly end_s: number;
  /** From the gear channel or from engine speed over vehicle speed and the car's ratios; null where unknown. */
  readonly gear: number | null;
  readonly rpmFrom: number;
  readonly rpmTo: number;
  /** False for a pull that was lifted, cut or interrupted before it reached a usable span. */
  readonly complete: boolean;
  readonly flags: readonly Note[];
};
