import {
  boostOf,
  type Channel,
  channelOf,
  headingOver,
  type Log,
  type Pull,
  type QuantityId,
  quantityIds,
} from '../../log/index.ts';
import type { Conditions, PullPower } from '../../power/index.ts';
import type { PullEvents, PullEvidence } from './pull-evidence.ts';
import { readAt } from './read-at.ts';

/** Quantities that are the axis itself or say nothing of how the engine was run. */
const notWitnesses: ReadonlySet<QuantityId> = new Set([
  'time',
  'engineSpeed',
  'gear',
  'knockCount',
  'distance',
  'latitude',
  'longitude',
  'heading',
  'wheelPower',
  'enginePower',
  'wheelTorque',
  'engineTorque',
  'acceleration',
]);

/** What the log itself does not say of a pull. */
export type PullContext = {
  /** Unique among the pulls of a session; default is the file's name and the start time. */
  readonly id?: string;
  readonly entryId?: string | null;
  /** Place in the order of driving, one step per pull; default 0. */
  readonly order?: number;
  readonly direction?: 1 | -1 | null;
  readonly conditions?: Conditions | null;
  readonly mass_kg?: number | null;
};

/**
 * One pull as the judge sees it: its power with every other channel read at the same moments.
 *
 * @param log      as read; channels with a quantity are SI
 * @param pull     the window in it
 * @param power    of that pull; its `time` is the log's clock
 * @param context  what only the session knows: entry, order, direction, air, mass
 * @returns        curves of the length of power.engineSpeed_rad_s, NaN where a channel has a gap over 2 s
 *
 * Where several channels hold one quantity the surest is read; of retard and knock counts all are, as they
 * come one per cylinder.
 */
export function evidenceOfPull(
  log: Log,
  pull: Pull,
  power: PullPower,
  context: PullContext = {},
): PullEvidence {
  const curves: Partial<Record<QuantityId, Float64Array>> = {};
  const start: Partial<Record<QuantityId, number>> = {};
  // A slow sensor's neighbours may stand outside the pull.
  const from = lowerBound(log.time, pull.start_s - widestGap_s);
  const to = lowerBound(log.time, pull.end_s + widestGap_s);
  for (const quantity of quantityIds) {
    if (notWitnesses.has(quantity)) continue;
    const channel = channelOf(log, quantity);
    if (!channel) continue;
    const series = { time: log.time, values: channel.values, from, to };
    const curve = readAt(series, power.time, widestGap_s);
    if (!curve.some(Number.isFinite)) continue;
    curves[quantity] = curve;
    const first = readAt(series, Float64Array.of(pull.start_s), widestGap_s)[0] ?? Number.NaN;
    if (Number.isFinite(first)) start[quantity] = first;
  }
  // A tuner thinks in boost: where only the absolute pressure is logged the gauge's reading follows from it.
  const gauge = curves.boost ? null : boostOf(log, barometerOf(context.conditions));
  if (gauge && !gauge.isAssumed) {
    curves.boost = readAt({ time: log.time, values: gauge.values, from, to }, power.time, widestGap_s);
  }
  return {
    id: context.id ?? `${log.file}@${pull.start_s}`,
    entryId: context.entryId ?? null,
    order: context.order ?? 0,
    gear: pull.gear,
    power,
    curves,
    start,
    events: eventsOf(log, pull),
    flags: pull.flags,
    isComplete: pull.complete,
    direction: context.direction ?? null,
    heading_rad: headingOver(log, pull),
    conditions: context.conditions ?? null,
    mass_kg: context.mass_kg ?? null,
  };
}

function barometerOf(conditions: Conditions | null | undefined): number | null {
  return conditions?.barometer_kPa == null ? null : conditions.barometer_kPa * 1000;
}

/** Longest stretch bridged between two readings of a slow sensor (common practice: temperatures at 1 Hz). */
const widestGap_s = 2;

function eventsOf(log: Log, pull: Pull): PullEvents {
  const all = (quantity: QuantityId) => log.channels.filter((c) => c.quantity === quantity);
  const retards = all('knockRetard').map((c) => extreme(c, pull, Math.abs));
  const counts = all('knockCount').map((c) => countIn(c, pull));
  const known = (values: readonly number[]) => values.filter(Number.isFinite);
  return {
    knockRetard_rad: known(retards).length > 0 ? Math.max(...known(retards)) : null,
    knockEvents: known(counts).length > 0 ? known(counts).reduce((a, b) => a + b, 0) : null,
  };
}

function extreme(channel: Channel, pull: Pull, of: (value: number) => number): number {
  let most = Number.NaN;
  for (let i = pull.from; i < pull.to; i++) {
    const value = of(channel.values[i] as number);
    if (!(value <= most)) most = Number.isNaN(value) ? most : value;
  }
  return most;
}

/** Rises of a counter. A counter that is cleared in the pull starts again from nothing. */
function countIn(channel: Channel, pull: Pull): number {
  let events = Number.NaN;
  let last = Number.NaN;
  for (let i = pull.from; i < pull.to; i++) {
    const value = channel.values[i] as number;
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(events)) events = 0;
    else if (value > last) events += value - last;
    last = value;
  }
  return events;
}

function lowerBound(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
