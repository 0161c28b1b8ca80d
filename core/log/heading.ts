import { degrees } from '../units/index.ts';
import { channelOf, type Log } from './channel.ts';
import type { Span } from './span.ts';

/** Under this the receiver's own wandering decides where a car went [m] (common practice). */
const leastDistance = 50;
const earthRadius = 6_371_000;
/** Slower than this a heading by satellite is noise [m/s] (common practice: walking pace and a little). */
const leastSpeed = 3;
/** Headings whose mean is shorter than this went round a bend or wander (common practice). */
const leastAgreement = 0.7;

/**
 * Where the car went over a span of rows, clockwise from north [rad]: from its first position to its last, else the mean
 * of the logged headings while it moved; null where neither is logged, it hardly moved, or it went round a bend.
 */
export function headingOver(log: Log, span: Span): number | null {
  return byPosition(log, span) ?? byHeading(log, span);
}

function byPosition(log: Log, { from, to }: Span): number | null {
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
  // The short way round, also over the line of 180 degrees.
  const east = Math.asin(Math.sin(degrees(lon1 - lon0))) * Math.cos(degrees(lat0));
  const distance = earthRadius * Math.hypot(north, east);
  return distance >= leastDistance ? Math.atan2(east, north) : null;
}

/** Headings are added as arrows, so that 359 and 1 degree mean north. */
function byHeading(log: Log, { from, to }: Span): number | null {
  const heading = channelOf(log, 'heading');
  const speed = channelOf(log, 'gpsSpeed') ?? channelOf(log, 'vehicleSpeed');
  if (!heading || !speed) return null;
  let [north, east, count] = [0, 0, 0];
  for (let i = from; i < Math.min(to, log.time.length); i++) {
    const angle = heading.values[i] as number;
    if (Number.isNaN(angle) || !((speed.values[i] as number) >= leastSpeed)) continue;
    north += Math.cos(angle);
    east += Math.sin(angle);
    count++;
  }
  return Math.hypot(north, east) > leastAgreement * count ? Math.atan2(east, north) : null;
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
