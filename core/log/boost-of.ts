import { channelOf, type Log } from './channel.ts';

/** Standard atmosphere [Pa], for want of a barometer (ISO 2533, sea level). */
export const standardPressure = 101_325;

/** A pressure per sample, and whether the air around it had to be assumed. */
export type DerivedPressure = {
  /** [Pa], one per sample. */
  readonly values: Float64Array;
  /** Column it came from. */
  readonly column: string;
  /** True where neither the log nor the caller knows the barometer. */
  readonly isAssumed: boolean;
};

/**
 * Boost above the air around [Pa gauge], from a boost column, else from manifold pressure less the barometer;
 * null where neither is logged. One spike of a barometer column does no harm: its median counts.
 *
 * @param barometer  of the run [Pa], beaten by a barometer in the log
 */
export function boostOf(log: Pick<Log, 'channels'>, barometer?: number | null): DerivedPressure | null {
  return derive(log, 'boost', 'manifoldPressure', -1, barometer);
}

/** Manifold pressure [Pa absolute], from its column, else from boost and the barometer; see boostOf. */
export function manifoldPressureOf(
  log: Pick<Log, 'channels'>,
  barometer?: number | null,
): DerivedPressure | null {
  return derive(log, 'manifoldPressure', 'boost', 1, barometer);
}

function derive(
  log: Pick<Log, 'channels'>,
  wanted: 'boost' | 'manifoldPressure',
  other: 'boost' | 'manifoldPressure',
  sign: 1 | -1,
  barometer: number | null | undefined,
): DerivedPressure | null {
  const direct = channelOf(log, wanted);
  if (direct) return { values: direct.values, column: direct.column, isAssumed: false };
  const source = channelOf(log, other);
  if (!source) return null;
  const air = loggedBarometer(log) ?? barometer ?? null;
  const add = sign * (air ?? standardPressure);
  return { values: source.values.map((p) => p + add), column: source.column, isAssumed: air === null };
}

/** Median of the barometer column [Pa], or null where none is logged. */
export function loggedBarometer(log: Pick<Log, 'channels'>): number | null {
  const channel = channelOf(log, 'barometricPressure');
  if (!channel) return null;
  const sorted = channel.values.filter((p) => !Number.isNaN(p)).sort();
  return sorted[sorted.length >> 1] ?? null;
}
