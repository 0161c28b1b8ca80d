import { type Channel, channelOf, type Log, median, type QuantityId } from '../log/index.ts';
import { numbersWithin } from './numbers-within.ts';
import type { PullWindow } from './pull-window.ts';

/** A channel in which a dyno, or a control unit's model, tells power or torque. */
export type Reading = {
  readonly channel: Channel;
  readonly at: 'wheel' | 'engine';
  readonly is: 'power' | 'torque';
};

/** Why a channel of power or torque tells nothing of a pull. */
export type UnusableReading = 'no-number' | 'zeros' | 'below-zero' | 'one-number' | 'too-much';

const order = [
  ['wheelPower', 'wheel', 'power'],
  ['wheelTorque', 'wheel', 'torque'],
  ['enginePower', 'engine', 'power'],
  ['engineTorque', 'engine', 'torque'],
] as const satisfies readonly (readonly [QuantityId, Reading['at'], Reading['is']])[];

/** A curve of a pull can't be told from fewer readings, as everywhere in power. */
const leastReadings = 8;
/** No car on petrol makes more than these (common practice): 2 MW, and in N m at crank and axle. */
const most = { power: 2e6, engine: 3000, wheel: 20_000 };

/** The channels of power and torque, the one nearest to the road first, and why each that says nothing does so. */
export function readingsOf(
  log: Log,
  { useFrom, useTo }: PullWindow,
): {
  readonly usable: readonly Reading[];
  readonly unusable: readonly (Reading & { why: UnusableReading })[];
} {
  const usable: Reading[] = [];
  const unusable: (Reading & { why: UnusableReading })[] = [];
  for (const [quantity, at, is] of order) {
    const channel = channelOf(log, quantity);
    if (!channel) continue;
    const reading = { channel, at, is };
    const why = whyUnusable(reading, useFrom, useTo);
    if (why) unusable.push({ ...reading, why });
    else usable.push(reading);
  }
  return { usable, unusable };
}

function whyUnusable({ channel, at, is }: Reading, from: number, to: number): UnusableReading | null {
  const values = numbersWithin(channel.values, from, to);
  if (values.length < leastReadings) return 'no-number';
  if (values.every((v) => v === 0)) return 'zeros';
  const middle = median(values);
  // The engine drives through all of a full pull; a curve upside down or mostly nothing is none.
  if (!(middle > 0)) return 'below-zero';
  if (middle > (is === 'power' ? most.power : most[at])) return 'too-much';
  // Torque may be flat, as a control unit holds it; power then rises with speed.
  return is === 'power' && values.every((v) => v === values[0]) ? 'one-number' : null;
}
