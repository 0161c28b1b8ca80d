import type { Note } from '../../result/index.ts';
import { headerParts } from '../columns/header-unit.ts';
import { matchName } from '../columns/name-match.ts';
import type { RawColumn } from '../columns/recognise.ts';

/** A column with the flags of its cells; columns without any share one array. */
export type FlaggedColumn = { readonly column: RawColumn; readonly flags: Uint8Array };

/** No log is written this much against its clock but one that lists the newest row first. */
const mostlyBackward = 0.8;
/** Lowest, highest, mean and the like: a table's foot has no more rows than this. */
const longestFoot = 12;
/** A clock that misses stamps throughout may miss the last ones too. */
const fewMissing = 0.01;

/**
 * Turns a log that lists its newest row first, in place, and says so; null where the clock runs forward, or where
 * another time column does.
 */
export function turnNewestFirst(columns: readonly FlaggedColumn[]): Note | null {
  const clocks = columns.filter(({ column }) => isNamedTime(column.name));
  if (clocks.length === 0 || !clocks.every(({ column }) => runsBackward(column.values))) return null;
  // A foot stays below.
  const foot = footRows((clocks[0] as FlaggedColumn).column.values);
  const turned = new Set<Uint8Array>();
  for (const { column, flags } of columns) {
    column.values.subarray(0, column.values.length - foot).reverse();
    if (turned.has(flags)) continue;
    turned.add(flags);
    flags.subarray(0, flags.length - foot).reverse();
  }
  return { code: 'log/newest-first', facts: {} };
}

/** Whether a heading says time, whatever the numbers below it do. */
export function isNamedTime(name: string): boolean {
  return matchName(headerParts(name).name)[0]?.quantity === 'time';
}

function runsBackward(values: Float64Array): boolean {
  let back = 0;
  let all = 0;
  for (let i = 1; i < values.length; i++) {
    const d = (values[i] as number) - (values[i - 1] as number);
    if (d < 0) back++;
    if (d !== 0 && !Number.isNaN(d)) all++;
  }
  return all > 1 && back > mostlyBackward * all;
}

/**
 * How many rows at the end are no samples: without a stamp, under rows that all have theirs. Some programs write
 * the lowest and highest of each column there.
 *
 * @param stamps  of the time column as read, NaN where there is none
 */
export function footRows(stamps: Float64Array): number {
  let end = stamps.length;
  while (end > 0 && Number.isNaN(stamps[end - 1])) end--;
  const foot = stamps.length - end;
  if (foot === 0 || foot > longestFoot || foot > end) return 0;
  let missing = 0;
  for (let i = 0; i < end; i++) if (Number.isNaN(stamps[i])) missing++;
  return missing > fewMissing * end ? 0 : foot;
}
