import { describe, expect, it } from 'vitest';
import { localFit } from '../../../../core/power/smoothing/local-polynomial.ts';
import { checkValuesWhere } from '../../../support/check-values.ts';

const points = checkValuesWhere((v) => v.id.startsWith('savgol-'), 10);

describe('smoothing weights of Savitzky and Golay, Analytical Chemistry 36 (1964) 1627', () => {
  it.each(points.map((p) => [p.id, p] as const))('%s', (id, p) => {
    const count = Number(p.inputs.points);
    const time = Float64Array.from({ length: count }, (_, i) => i);
    const weight = new Float64Array(count).fill(1);
    const degree = id.includes('cubic') ? 3 : 2;
    const middle = (count - 1) / 2;
    const fit = localFit({ time, value: time, weight }, middle, middle, degree, 'uniform');
    const found = id.includes('-d-') ? fit.slopeWeights : fit.valueWeights;
    const expected = p.expected as number[];
    expect(found.length).toBe(count);
    expected.forEach((e, i) => {
      expect(Math.abs((found[i] as number) - e)).toBeLessThanOrEqual(Number(p.tolerance));
    });
  });
});
