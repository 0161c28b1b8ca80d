import { degrees } from '../units/index.ts';
import { channelOf, type Log } from './channel.ts';
import type { Span } from './span.ts';

/** Under this the receiver's own wandering decides where a car went [m] (common practice). */
const leastDistance = 50;
const earthRadius = 6_371_000;

/**
 * Where the car went over a span of rows: from its first position to its last, clockwise from north [rad]; null where no
 * position is logged or it hardly moved. Positions are in degrees.
 */
export function headingOver(log: Log, { from, to }: Span): number | null {
  const latitude = channelOf(log, 'latitude');
  const longitude = channelOf(log, 'longitude');
  if (!latitude || !longitude) return null;
  const ends = (values: Float64Array) => {
    const known = [...values.subarray(from, to)].filter(Number.isFinite);
    return [known[0] ?? Number.NaN, known[known.length - 1] ?? Number.NaN] as const;
  };
  const [lat0, lat1] = ends(latitude.values);
  const [lon0, lon1] = ends(longitude.values);
  const north = degrees(lat1 - lat0);
  const east = degrees(lon1 - lon0) * Math.cos(degrees(lat0));
  const distance = earthRadius * Math.hypot(north, east);
  return distance >= leastDistance ? Math.atan2(east, north) : null;
}

/** Out 1 along the first heading that is known, back -1 against it, 0 where it is not known or neither. */
export function waysByHeading(headings: readonly (number | null)[]): (1 | -1 | 0)[] {
  const first = headings.find((h) => h !== null) ?? null;
  return headings.map((heading) => {
    if (first === null || heading === null) return 0;
    const along = Math.cos(heading - first);
    // A bend in the road is neither way.
    return along > 0.7 ? 1 : along < -0.7 ? -1 : 0;
  });
}
