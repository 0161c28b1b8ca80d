import type { Note } from '../result/index.ts';
import type { QuantityId } from './quantity.ts';
import type { Segment } from './span.ts';

/** Why a sample is NaN or doubtful; bits of Channel.flags. */
export const sampleFlag = {
  /** The cell was empty. */
  missing: 1,
  /** The cell held text that is no number. */
  text: 2,
  /** Held from an earlier row: the sensor's own rate is slower than the file's. */
  held: 4,
  /** The cell held the letter of the southern or the western half of the earth, for the position beside it. */
  southOrWest: 8,
} as const;

/**
 * One column of a log. `values` has one number per sample, NaN where `flags` tells why. With a quantity the
 * values are SI; without one they stand as in the file.
 */
export type Channel = {
  /** The header as it stands in the file, units and all. */
  readonly column: string;
  readonly quantity: QuantityId | null;
  /** Id of the unit in core/units that the file's numbers are in, or the file's own text where unknown. */
  readonly unit: string;
  /** 0 to 1: how sure the reader is of quantity and unit, and the reason. */
  readonly confidence: number;
  readonly reason: Note | null;
  readonly values: Float64Array;
  readonly flags: Uint8Array;
};

/**
 * A log as read. Samples are in the file's order; `time` is the log's own clock in seconds and never goes
 * backwards: behind a clock that starts anew it is counted on.
 */
export type Log = {
  readonly file: string;
  readonly time: Float64Array;
  readonly channels: readonly Channel[];
  /** Half-open index ranges in which the clock runs on without a reset or a gap. Never empty. */
  readonly segments: readonly Segment[];
  readonly warnings: readonly Note[];
  /** Where each column's mapping came from can be shown and corrected; see column-mapping. */
  readonly style: LogStyle;
};

export const logEncodings = [
  'utf-8',
  'utf-16le',
  'utf-16be',
  'windows-1252',
  'windows-1250',
  'iso-8859-2',
  'macintosh',
  'cp850',
  'cp437',
  'cp852',
  'shift_jis',
] as const;

/** How the file was written, for the record and the import screen. */
export type LogStyle = {
  readonly encoding: (typeof logEncodings)[number];
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  /** Line of the header, counted from 1; the first line of data. */
  readonly headerLine: number;
  readonly firstDataLine: number;
  readonly timeFormat: 's' | 'ms' | 'min' | 'us' | 'clock' | 'iso' | 'sample-rate';
};

/** The channel that holds this quantity: the surest one, or undefined. */
export function channelOf(log: Pick<Log, 'channels'>, quantity: QuantityId): Channel | undefined {
  let best: Channel | undefined;
  for (const channel of log.channels) {
    if (channel.quantity === quantity && (!best || channel.confidence > best.confidence)) best = channel;
  }
  return best;
}
