import { describe, expect, it } from 'vitest';
import { bandOfDays } from '../../../core/compare/band/band-of-days.ts';
import { sharedBand, trustedBand } from '../../../core/compare/band/common-band.ts';
import { inventDay, quietDay } from '../../support/invented-session.ts';

const rpm = Math.PI / 30;
const band = (from: number, to: number) => [from * rpm, to * rpm] as const;
const entries = inventDay(quietDay);
const pull = entries[0]?.pulls[0];
if (!pull) throw new Error('the invented day has no pull');

describe('the engine speeds that are compared', () => {
  it('are those that all pulls share', () => {
    const shared = sharedBand([band(2500, 6300), band(2700, 6500), band(2600, 6400)]);
    expect(shared?.map((w) => Math.round(w / rpm))).toEqual([2700, 6300]);
  });

  it('are none where less than 500 rpm are shared', () => {
    expect(sharedBand([band(2500, 4000), band(3600, 6500)])).toBeNull();
    expect(sharedBand([band(2500, 4000), band(3450, 6500)])).not.toBeNull();
  });

  it('end half a smoothing width inside the pull', () => {
    const { engineSpeed_rad_s: speed, time, bandwidth } = pull.power;
    const [low, high] = trustedBand(pull) ?? [Number.NaN, Number.NaN];
    const at = (w: number) => time[speed.indexOf(w)] as number;
    expect(at(low) - (time[0] as number)).toBeGreaterThanOrEqual(bandwidth / 2);
    expect((time[time.length - 1] as number) - at(high)).toBeGreaterThanOrEqual(bandwidth / 2);
    expect(at(low) - (time[0] as number)).toBeLessThan(bandwidth);
  });

  it('are none of a pull without power', () => {
    const without = { ...pull.power, wheelPower: pull.power.wheelPower.map(() => Number.NaN) };
    expect(trustedBand({ ...pull, power: without })).toBeNull();
  });

  it('are the same for two days of a car, from where boost is up in every pull', () => {
    const [low, high] = bandOfDays([entries, inventDay({ ...quietDay, seed: 2 })]) ?? [0, 0];
    // Boost of the invented car reaches 85 % of its plateau near 3,700 rpm.
    expect(low / rpm).toBeGreaterThan(3300);
    expect(low / rpm).toBeLessThan(4100);
    expect(high / rpm).toBeGreaterThan(6000);
    expect(bandOfDays([])).toBeNull();
  });
});
