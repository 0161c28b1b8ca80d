import type { Channel } from '../channel.ts';

const furthest = { latitude: 90, longitude: 180 } as const;
type Axis = keyof typeof furthest;

/**
 * Latitude and longitude in degrees where the file writes degrees and minutes in one number, 5230.12345 for 52 degrees
 * 30.12345 minutes; columns that are no position on earth lose their meaning.
 *
 * Both columns are written alike, so one that no degree can be tells of both. A letter of the hemisphere in another column
 * is not read: west and south then stand as east and north, which mirrors the map and changes no angle between two ways.
 *
 * Source: the form ddmm.mmmm is that of NMEA 0183, sentences GGA and RMC (from memory).
 * Check:  5230.12345 is 52.5020575 degrees.
 */
export function settlePositions(channels: readonly Channel[]): readonly Channel[] {
  const positions = channels.filter((c) => axisOf(c) !== null);
  if (positions.every((c) => c.values.every((v) => !(Math.abs(v) > furthest[axisOf(c) ?? 'latitude']))))
    return channels;
  const isBoth = new Set(positions.map(axisOf)).size === 2;
  const isInMinutes =
    isBoth && positions.every((c) => c.values.every((v) => Number.isNaN(v) || isMinutes(v, axisOf(c))));
  if (!isInMinutes)
    return channels.map((c) =>
      axisOf(c) === null
        ? c
        : { ...c, quantity: null, confidence: 0, reason: { code: 'log/column-unknown', facts: {} } },
    );
  for (const { values } of positions) {
    for (let i = 0; i < values.length; i++) values[i] = fromMinutes(values[i] as number);
  }
  return channels;
}

function axisOf({ quantity }: Channel): Axis | null {
  return quantity === 'latitude' || quantity === 'longitude' ? quantity : null;
}

function isMinutes(value: number, axis: Axis | null): boolean {
  const size = Math.abs(value);
  return size % 100 < 60 && size / 100 <= furthest[axis ?? 'latitude'];
}

function fromMinutes(value: number): number {
  const size = Math.abs(value);
  return Math.sign(value) * (Math.floor(size / 100) + (size % 100) / 60);
}
