import { channelOf, type Log, median } from '../../log/index.ts';
import { numbersWithin } from '../numbers-within.ts';
import type { CoastDownWindow } from './coast-down.ts';

/** An engine in neutral idles below this (common practice), 1500 rpm [rad/s]. */
export const idle_rad_s = (1500 * Math.PI) / 30;
/** A foot on the pedal, as a share of its travel (common practice). */
export const foot = 0.06;
/** Half way between an engine that idles, whatever the road does, and one that the road turns. */
const followsBy = 0.5;

/**
 * Whether the road turned the engine over a roll: in gear engine speed falls in proportion to road speed, also below the
 * speed of idling, and in neutral it stays.
 *
 *   ln(w1 / w2) / ln(v1 / v2)        1 in gear, 0 in neutral; medians of the first and the last quarter
 *
 * @param speed  road speed, one per sample [m/s]
 * @returns      false where engine speed is not logged
 * Source: kinematics.
 */
export function isDriven(log: Log, speed: Float64Array, { from, to }: CoastDownWindow): boolean {
  const engine = channelOf(log, 'engineSpeed');
  if (!engine) return false;
  const quarter = Math.max(1, Math.floor((to - from) / 4));
  const fall = (values: Float64Array) =>
    Math.log(
      median(numbersWithin(values, from, from + quarter)) / median(numbersWithin(values, to - quarter, to)),
    );
  return fall(engine.values) > followsBy * fall(speed);
}

/** Whether a roll that a person named was driven with a foot on the pedal or in gear, as far as the log tells. */
export function isInGear(log: Log, speed: Float64Array, window: CoastDownWindow): boolean {
  const level = (quantity: 'engineSpeed' | 'pedal') => {
    const channel = channelOf(log, quantity);
    return channel ? median(numbersWithin(channel.values, window.from, window.to)) : 0;
  };
  return level('engineSpeed') > idle_rad_s || level('pedal') > foot || isDriven(log, speed, window);
}
