import type { Note } from '../../result/index.ts';
import { spreadOf } from '../spread.ts';
import { type FlaggedColumn, isNamedTime } from './row-order.ts';
import { usualStep } from './time-axis.ts';

/** The clocks of one recording begin and end within so much of its length of each other (common practice). */
const endsApart = 0.1;
/** Fewer readings are no channel of a log (common practice). */
const fewestReadings = 10;
/** Clocks nearer to each other than this share of a step are one. */
const sameStep = 0.25;

/** A time and the columns that were read at it: places among the columns of the file. */
type Group = { readonly clock: number; readonly readings: number; readonly until: number };

/**
 * Columns that come in groups, each with a time of its own before it (`time, rpm, time, speed`), brought to one time:
 * that of the group with the most readings. The others lie on straight lines between their readings, and hold nothing
 * before the first and after the last; their times go.
 *
 * @returns the columns, the places they had, and what is to be said; null where one time serves all
 */
export function toOneTime(
  columns: readonly FlaggedColumn[],
): { readonly columns: FlaggedColumn[]; readonly places: number[]; readonly note: Note } | null {
  const groups = groupsOf(columns);
  const base = groups.reduce<Group | undefined>(
    (most, g) => (most && most.readings >= g.readings ? most : g),
    undefined,
  );
  if (!base || groups.length < 2) return null;
  const stampsOf = ({ clock, readings }: Group) =>
    (columns[clock] as FlaggedColumn).column.values.subarray(0, readings);
  const time = stampsOf(base);
  const apart = endsApart * ((time.at(-1) as number) - (time[0] as number));
  const areOfOneLog = groups.every((group) => {
    const own = stampsOf(group);
    const [first, last] = [own[0] as number, own.at(-1) as number];
    return Math.abs(first - (time[0] as number)) < apart && Math.abs(last - (time.at(-1) as number)) < apart;
  });
  const step = sameStep * usualStep(time);
  const differ = groups.some((group) => {
    const own = stampsOf(group);
    return own.length !== time.length || own.some((t, i) => Math.abs(t - (time[i] as number)) > step);
  });
  if (!areOfOneLog || !differ) return null;

  const blank = new Uint8Array(time.length);
  const placed: FlaggedColumn[] = [];
  const places: number[] = [];
  for (const group of groups) {
    const isBase = group === base;
    const own = stampsOf(group);
    for (let c = isBase ? group.clock : group.clock + 1; c < group.until; c++) {
      const { column, flags } = columns[c] as FlaggedColumn;
      const values = isBase
        ? column.values.subarray(0, time.length)
        : onLines(own, column.values.subarray(0, own.length), time);
      placed.push({
        column: { ...column, values, spread: spreadOf(values) },
        flags: isBase ? flags.subarray(0, time.length) : blank,
      });
      places.push(c);
    }
  }
  const { name } = (columns[base.clock] as FlaggedColumn).column;
  return {
    columns: placed,
    places,
    note: { code: 'log/times-joined', facts: { column: name, count: groups.length } },
  };
}

/** None where a column stands before the first time, or a time stands alone. */
function groupsOf(columns: readonly FlaggedColumn[]): Group[] {
  const clocks: { clock: number; readings: number }[] = [];
  columns.forEach(({ column }, clock) => {
    const readings = risingReadings(column.values);
    // Few columns rise, and a name takes longer to understand than numbers to look at.
    if (readings >= fewestReadings && isNamedTime(column.name)) clocks.push({ clock, readings });
  });
  const groups = clocks.map((c, k) => ({ ...c, until: clocks[k + 1]?.clock ?? columns.length }));
  return groups[0]?.clock === 0 && groups.every((g) => g.until > g.clock + 1) ? groups : [];
}

/** Numbers of a column that rise without a break from the first row to the last number; 0 where they do not. */
function risingReadings(values: Float64Array): number {
  let end = values.length;
  while (end > 0 && Number.isNaN(values[end - 1])) end--;
  for (let i = 1; i < end; i++) if (!((values[i] as number) > (values[i - 1] as number))) return 0;
  return end;
}

function onLines(own: Float64Array, values: Float64Array, time: Float64Array): Float64Array {
  const out = new Float64Array(time.length).fill(Number.NaN);
  let k = 0;
  for (let i = 0; i < time.length; i++) {
    const t = time[i] as number;
    while (k < own.length - 2 && (own[k + 1] as number) < t) k++;
    const [a, b] = [own[k] as number, own[k + 1] as number];
    if (t < a || t > b) continue;
    const [from, to] = [values[k] as number, values[k + 1] as number];
    out[i] = from + ((to - from) * (t - a)) / (b - a);
  }
  return out;
}
