import { describe, expect, it } from 'vitest';
import type { RideGate } from '../../../renderer/ride/gate-words.ts';
import { wakesBetween } from '../../../renderer/ride/wakes.ts';

const gate = (quantity: RideGate['quantity'], state: RideGate['state']): RideGate => ({
  quantity,
  kind: 'number',
  limit: 1,
  isLowest: false,
  measured: 1,
  state,
  ifClosed: 'refill',
});
const seen = (pulls: number, gates: RideGate[] = [], entryId = 'a') => ({ entryId, pulls, gates });

describe('wakesBetween', () => {
  it('is silent at the first look, whatever is closed', () => {
    expect(wakesBetween(null, seen(3, [gate('knock', 'closed')]))).toEqual([]);
  });

  it('wakes for a new pull, and not when one is taken away', () => {
    expect(wakesBetween(seen(3), seen(4)).map((w) => w.cue)).toEqual(['pull']);
    expect(wakesBetween(seen(4), seen(3))).toEqual([]);
  });

  it('wakes once for a gate that closes, not for one that comes near or stays closed', () => {
    const near = [gate('lambda', 'near')];
    const closed = [gate('lambda', 'closed')];
    expect(wakesBetween(seen(3), seen(3, near))).toEqual([]);
    expect(wakesBetween(seen(3, near), seen(3, closed)).map((w) => w.cue)).toEqual(['gate']);
    expect(wakesBetween(seen(3, closed), seen(3, closed))).toEqual([]);
  });

  it('puts the gate before the pull that closed it, and tells low fluid apart', () => {
    const now = seen(4, [gate('knock', 'closed'), gate('fluidLeft', 'near')], 'b');
    expect(wakesBetween(seen(3), now).map((w) => w.cue)).toEqual(['gate', 'fluid', 'pull']);
    expect(
      wakesBetween(now, { ...now, gates: [gate('knock', 'closed'), gate('fluidLeft', 'closed')] }),
    ).toEqual([]);
  });
});
