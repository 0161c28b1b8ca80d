import { describe, expect, it } from 'vitest';
import { factorBand, inverseBand, productInBand, solveBand } from '../../../../core/power/smoothing/band.ts';
import { type Cells, slopeWeights, valueWeights } from '../../../../core/power/smoothing/cubic-cells.ts';
import { inverse } from '../../../support/plain-slope.ts';
import { seeded } from '../../../support/random.ts';

/** A positive band of a size, and the same as a whole matrix. */
function band(size: number) {
  const uniform = seeded(size);
  const rows = new Float64Array(4 * size);
  const whole = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let i = 0; i < size; i++)
    for (let k = 0; k < 4 && i + k < size; k++) {
      const x = k === 0 ? 4 + uniform() : uniform() - 0.5;
      rows[4 * i + k] = x;
      (whole[i] as number[])[i + k] = x;
      (whole[i + k] as number[])[i] = x;
    }
  return { rows, whole };
}

describe.each([1, 2, 3, 4, 7, 30])('a band of %i rows', (size) => {
  const { rows, whole } = band(size);
  factorBand(rows, size);
  const dense = inverse(whole);

  it('gives the solution that the whole matrix gives', () => {
    const x = Float64Array.from({ length: size }, (_, i) => Math.sin(i + 1));
    const expected = dense.map((r) => r.reduce((sum, a, i) => sum + a * (x[i] as number), 0));
    solveBand(rows, x);
    x.forEach((v, i) => {
      expect(v).toBeCloseTo(expected[i] as number, 12);
    });
  });

  it('gives its own part of the inverse, and products with it', () => {
    const z = new Float64Array(4 * size);
    inverseBand(rows, size, z);
    for (let i = 0; i < size; i++)
      for (let k = 0; k < 4 && i + k < size; k++)
        expect(z[4 * i + k]).toBeCloseTo(dense[i]?.[i + k] as number, 12);
    if (size < 4) return;
    const p = [1, -2, 0.5, 3];
    const q = [0.2, 1, -1, 2];
    let expected = 0;
    for (let a = 0; a < 4; a++)
      for (let b = 0; b < 4; b++)
        expected += (p[a] as number) * (q[b] as number) * (dense[size - 4 + a]?.[size - 4 + b] as number);
    expect(productInBand(z, size - 4, p, q)).toBeCloseTo(expected, 12);
  });
});

describe('a spline on even cells', () => {
  const cells: Cells = { first: 2, width: 0.25, count: 8 };
  const of = new Float64Array(4);

  it('weighs its coefficients 1, 4, 1, 0 sixths at the edge of a cell', () => {
    valueWeights(cells, 3, 2.75, of);
    [1, 4, 1, 0].forEach((w, i) => {
      expect(of[i]).toBeCloseTo(w / 6, 12);
    });
  });

  it('has weights that sum to one, and slopes that are theirs', () => {
    const before = new Float64Array(4);
    const after = new Float64Array(4);
    for (const t of [2.76, 2.8, 2.9, 2.99]) {
      valueWeights(cells, 3, t - 1e-6, before);
      valueWeights(cells, 3, t + 1e-6, after);
      slopeWeights(cells, 3, t, of);
      expect(after.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      of.forEach((s, i) => {
        expect(s).toBeCloseTo(((after[i] as number) - (before[i] as number)) / 2e-6, 6);
      });
    }
  });
});
