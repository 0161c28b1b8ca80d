import type { Note } from '../../result/index.ts';
import { type Channel, channelOf, type Log } from '../channel.ts';
import { spreadOf } from '../spread.ts';

/** Rows of the highest and of the lowest pressure that are held against each other. */
const topShare = 0.05;
const lowShare = 0.2;
/** Share of the channel's travel by which it has to be lower where the pressure is highest (common practice). */
const turnedBy = 0.5;
const fewestRows = 50;

/**
 * Turns a pedal or throttle round that falls as it opens, as the second track of a sensor does in volts: where the
 * manifold is fullest the plate cannot be shut and stand open where it is emptiest. Without a pressure nothing tells,
 * and the channel stays.
 *
 * @returns what was turned; the values are changed in place
 */
export function turnFallingOpenings(log: Pick<Log, 'channels'>): Note[] {
  const openings = log.channels.filter((c) => c.quantity === 'pedal' || c.quantity === 'throttle');
  // Which rows have most of it is the same, gauge or absolute.
  const pressure = (channelOf(log, 'boost') ?? channelOf(log, 'manifoldPressure'))?.values;
  if (!pressure || pressure.length < fewestRows) return [];
  return openings.flatMap((channel): Note[] => {
    if (!falls(channel, pressure)) return [];
    const { min, max } = spreadOf(channel.values);
    for (let i = 0; i < channel.values.length; i++)
      channel.values[i] = Math.max(0, min + max - (channel.values[i] as number));
    return [{ code: 'log/opening-turned', facts: { column: channel.column } }];
  });
}

function falls({ values }: Channel, pressure: Float64Array): boolean {
  const stride = Math.max(1, Math.floor(values.length / 4000));
  const rows: number[] = [];
  for (let i = 0; i < values.length; i += stride)
    if (Number.isFinite(values[i]) && Number.isFinite(pressure[i])) rows.push(i);
  if (rows.length < fewestRows) return false;
  rows.sort((a, b) => (pressure[a] as number) - (pressure[b] as number));
  const middle = (picked: readonly number[]) =>
    spreadOf(Float64Array.from(picked, (i) => values[i] as number)).middle;
  const { low, high } = spreadOf(values);
  const open = middle(rows.slice(-Math.ceil(topShare * rows.length)));
  const shut = middle(rows.slice(0, Math.ceil(lowShare * rows.length)));
  return shut - open > turnedBy * (high - low) && high > low;
}
