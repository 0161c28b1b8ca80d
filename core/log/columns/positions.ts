import { type Channel, sampleFlag } from '../channel.ts';
import { furthestLetters } from './position-column.ts';

const furthest = { latitude: 90, longitude: 180 } as const;
type Axis = keyof typeof furthest;

/** Of which axis the cells of a column are letters; null where they are anything else too. */
export type Letters = Axis | null;

/**
 * Latitude and longitude in degrees where the file writes degrees and minutes in one number, 5230.12345 for 52 degrees
 * 30.12345 minutes; columns that are no position on earth lose their meaning.
 *
 * Both columns are written alike, so one that no degree can tells of both. South and west are told by a sign, or by letters
 * in a column beside the position.
 *
 * @param letters  goes along the channels
 * Source: the form ddmm.mmmm is that of NMEA 0183, sentences GGA and RMC (from memory).
 * Check:  5230.12345 is 52.5020575 degrees.
 */
export function settlePositions(
  channels: readonly Channel[],
  letters: readonly Letters[],
): readonly Channel[] {
  channels.forEach((channel, c) => {
    const of = lettersBeside(channels, letters, c);
    if (of) turnByLetters(channel.values, of.flags);
  });
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

/** The column with the letters of a position: right behind it, else in front of it, else one further away. */
function lettersBeside(
  channels: readonly Channel[],
  letters: readonly Letters[],
  column: number,
): Channel | null {
  const channel = channels[column];
  const axis = channel ? axisOf(channel) : null;
  if (axis === null) return null;
  for (let away = 1; away <= furthestLetters; away++)
    for (const c of [column + away, column - away]) if (letters[c] === axis) return channels[c] ?? null;
  return null;
}

/** Where no letter stands the one before it counts, before the first one that. A number with a sign keeps it. */
function turnByLetters(values: Float64Array, flags: Uint8Array): void {
  const isLetter = (flag: number | undefined) => ((flag ?? 0) & sampleFlag.text) !== 0;
  let flag = flags.find(isLetter) ?? 0;
  for (let i = 0; i < values.length; i++) {
    if (isLetter(flags[i])) flag = flags[i] as number;
    const v = values[i] as number;
    if (v > 0 && (flag & sampleFlag.southOrWest) !== 0) values[i] = -v;
  }
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
