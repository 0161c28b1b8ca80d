import { describe, it } from 'vitest';
import { vapourPressure } from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { checkValue } from '../../support/check-values.ts';
import { expectKnownDeviation } from '../../support/known-deviation.ts';

const because =
  'ours is the equation of Wagner and Pruss (2002); the tolerance of the industrial one is the last digit of a computer check';

describe('saturation pressure of water beside the industrial formulation', () => {
  it.each([
    ['if97-psat-300K', 3e-7],
    ['if97-psat-500K', 5e-4],
  ] as const)('%s', (id, deviation) => {
    const value = checkValue(id);
    const published = {
      expected: Number(value.expected),
      tolerance: Number(value.tolerance),
      source: value.source,
    };
    const ours = unwrap(vapourPressure('water', Number(value.inputs.temperature_K))) / 1e6;
    expectKnownDeviation(ours, published, { deviation, because });
  });
});
