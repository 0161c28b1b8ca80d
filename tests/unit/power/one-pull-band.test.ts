import { describe, expect, it } from 'vitest';
import { onePullBand, type PullPower } from '../../../core/power/index.ts';
import { toSi } from '../../../core/units/index.ts';

const pull = (from_rpm: number, powers: readonly number[], own: number, shared: number): PullPower => ({
  engineSpeed_rad_s: Float64Array.from(powers, (_, i) => toSi(from_rpm + 50 * i, 'rpm')),
  wheelPower: Float64Array.from(powers),
  enginePower: Float64Array.from(powers),
  wheelPowerError: Float64Array.from(powers, () => own),
  systematicError: Float64Array.from(powers, () => shared),
  time: Float64Array.from(powers, (_, i) => i / 10),
  bandwidth: 0.5,
  basis: 'vehicle-speed',
  correction: { standard: 'none', factor: 1 },
  notes: [],
});

describe('how far off one pull may be', () => {
  it('is 1.96 times its own error and that of the car, in quadrature', () => {
    const band = onePullBand([pull(3000, [100_000, 110_000, 120_000], 300, 400)]);
    expect([...(band?.low ?? [])]).toEqual([100_000 - 980, 110_000 - 980, 120_000 - 980]);
    expect([...(band?.high ?? [])]).toEqual([100_000 + 980, 110_000 + 980, 120_000 + 980]);
  });

  it('stands about the mean where all pulls have power, and does not shrink with their number', () => {
    const band = onePullBand([
      pull(3000, [100_000, 110_000, 120_000, 130_000], 300, 400),
      pull(3050, [112_000, 122_000, Number.NaN], 300, 400),
    ]);
    expect([...(band?.engineSpeed_rad_s ?? [])]).toEqual([toSi(3050, 'rpm'), toSi(3100, 'rpm')]);
    expect([...(band?.low ?? [])]).toEqual([111_000 - 980, 121_000 - 980]);
  });

  it('is none without a stretch that all pulls share', () => {
    expect(onePullBand([])).toBeNull();
    expect(onePullBand([pull(3000, [1, 2, 3], 1, 1), pull(5000, [1, 2, 3], 1, 1)])).toBeNull();
  });
});
