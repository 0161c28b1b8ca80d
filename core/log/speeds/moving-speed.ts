import { type Channel, channelOf, type Log } from '../channel.ts';
import { spreadOf } from '../spread.ts';

/** A car that pulls changes its speed by more than this. */
const leastMove_m_s = 2;

/** A speed channel that stands still, as on a dyno whose rollers the car's logger does not see, tells no gear. */
export function movingSpeedOf(log: Log): Channel | null {
  for (const quantity of ['vehicleSpeed', 'gpsSpeed'] as const) {
    const channel = channelOf(log, quantity);
    const spread = channel && spreadOf(channel.values);
    if (channel && spread && spread.high - spread.low > leastMove_m_s) return channel;
  }
  return null;
}
