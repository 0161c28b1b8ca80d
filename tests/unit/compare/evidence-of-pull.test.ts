import { describe, expect, it } from 'vitest';
import { evidenceOfPull } from '../../../core/compare/index.ts';
import type { Channel, Log, Pull, QuantityId } from '../../../core/log/index.ts';
import type { PullPower } from '../../../core/power/index.ts';

const channel = (quantity: QuantityId, values: number[], confidence = 1): Channel => ({
  column: quantity,
  quantity,
  unit: 'si',
  confidence,
  reason: null,
  values: Float64Array.from(values),
  flags: new Uint8Array(values.length),
});

const log = (channels: Channel[]): Log => ({
  file: 'run.csv',
  time: Float64Array.of(0, 1, 2, 3, 4, 5),
  channels,
  segments: [{ from: 0, to: 6 }],
  warnings: [],
  style: {
    encoding: 'utf-8',
    delimiter: ',',
    decimal: '.',
    headerLine: 1,
    firstDataLine: 2,
    timeFormat: 's',
  },
});

const pull: Pull = {
  from: 1,
  to: 5,
  start_s: 1,
  end_s: 4,
  gear: 3,
  rpmFrom: 2500,
  rpmTo: 6000,
  complete: true,
  flags: [],
};

const power = (time: number[]): PullPower => {
  const curve = Float64Array.from(time);
  return {
    engineSpeed_rad_s: curve,
    wheelPower: curve,
    enginePower: curve,
    wheelPowerError: curve,
    systematicError: curve,
    time: curve,
    bandwidth: 0.3,
    basis: 'engine-speed',
    correction: { standard: 'none', factor: 1 },
    notes: [],
  };
};

describe('evidence of a pull', () => {
  it('reads the other channels at the same moments as the power', () => {
    const found = evidenceOfPull(log([channel('boost', [0, 10, 20, 30, 40, 50])]), pull, power([1.5, 3.25]));
    expect([...(found.curves.boost ?? [])]).toEqual([15, 32.5]);
    expect(found.start.boost).toBe(10);
  });

  it('bridges a slow sensor, and leaves a gap over 2 s as a gap', () => {
    const slow = channel('intakeTemperature', [300, Number.NaN, 302, Number.NaN, Number.NaN, 308]);
    const found = evidenceOfPull(log([slow]), pull, power([1, 2, 3]));
    expect([...(found.curves.intakeTemperature ?? [])]).toEqual([301, 302, Number.NaN]);
  });

  it('takes the surest of two channels that say the same', () => {
    const found = evidenceOfPull(
      log([channel('lambda', [1, 1, 1, 1, 1, 1], 0.4), channel('lambda', [2, 2, 2, 2, 2, 2], 0.9)]),
      pull,
      power([2]),
    );
    expect(found.curves.lambda?.[0]).toBe(2);
  });

  it('finds the deepest retard of any cylinder whatever its sign, and counts knocks inside the pull only', () => {
    const found = evidenceOfPull(
      log([
        channel('knockRetard', [0, 0, -0.01, 0, 0, -0.5]),
        channel('knockRetard', [0, 0, 0, -0.03, 0, 0]),
        channel('knockCount', [3, 4, 4, 6, 6, 9]),
      ]),
      pull,
      power([2]),
    );
    expect(found.events).toEqual({ knockRetard_rad: 0.03, knockEvents: 2 });
  });

  it('says null, not zero, where nobody listened for knock', () => {
    const found = evidenceOfPull(log([]), pull, power([2]));
    expect(found.events).toEqual({ knockRetard_rad: null, knockEvents: null });
  });
});
