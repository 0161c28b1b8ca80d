import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { methanolWaterExcessVolume } from '../../../../core/fluids/methanol-water-volume.ts';
import { substances } from '../../../../core/fluids/substance.ts';
import { curveAt } from '../../../../core/fluids/temperature-curve.ts';
import { checkValuesWhere } from '../../../support/check-values.ts';
import { inputNumber } from '../../../support/published.ts';
import { fitCurve, type Point } from './fit-curve.ts';
import { leastSquares } from './least-squares.ts';

/**
 * The coefficients that were fitted, fitted again: points.py takes the points from the reference equations
 * (source in points.json), fit-curve.ts fits them, and the shipped curve has to be that fit, apart from its level,
 * which is the handbook's. Limits are those that the citations of the curves promise.
 */
type Substance = 'water' | 'methanol' | 'ethanol';
type Property = 'density' | 'latentHeat' | 'liquidHeatCapacity' | 'vapourHeatCapacity' | 'viscosity';
const points = JSON.parse(readFileSync(new URL('points.json', import.meta.url), 'utf8')) as {
  [S in Substance]: { [P in Property]: Point[] };
};

/** Spread of the shipped curve over the refitted one about its mean, as a share. */
function apart(id: Substance, property: Property): { shape: number; level: number } {
  const shipped = substances[id].curves[property];
  const within = points[id][property].filter(([t]) => t >= shipped.valid.from && t <= shipped.valid.to);
  const again = fitCurve(shipped, within);
  const ratios = within.map(([t]) => curveAt(shipped, t) / curveAt(again, t));
  const level = ratios.reduce((a, b) => a + b, 0) / ratios.length;
  return { shape: Math.max(...ratios.map((r) => Math.abs(r / level - 1))), level };
}

describe('a fitted curve is what its points give', () => {
  it.each<[Substance, Property, number]>([
    ['water', 'latentHeat', 2e-4],
    ['water', 'liquidHeatCapacity', 1e-3],
    ['water', 'vapourHeatCapacity', 1e-3],
    ['water', 'viscosity', 3e-3],
    ['methanol', 'density', 5e-4],
    ['methanol', 'latentHeat', 1e-3],
    ['methanol', 'liquidHeatCapacity', 5e-4],
    ['methanol', 'vapourHeatCapacity', 5e-4],
    ['methanol', 'viscosity', 1e-3],
    ['ethanol', 'density', 5e-4],
    ['ethanol', 'latentHeat', 2e-3],
    ['ethanol', 'liquidHeatCapacity', 5e-4],
    ['ethanol', 'vapourHeatCapacity', 5e-4],
    ['ethanol', 'viscosity', 1e-3],
  ])('%s, %s', (id, property, within) => {
    const { shape, level } = apart(id, property);
    expect(shape).toBeLessThan(within);
    // The handbooks' level lies within this of the equations'.
    expect(Math.abs(level - 1)).toBeLessThan(0.02);
  });

  it('methanol-water at 20 C: the CRC column gives the excess volume again, within 0.1 kg/m3', () => {
    const density = { water: 998.2071, methanol: curveAt(substances.methanol.curves.density, 293.15) };
    const table = checkValuesWhere((c) => /^density-methanol-water-\d+$/.test(c.id), 11)
      .map((c) => ({ w: inputNumber(c, 'mass_percent') / 100, density: c.expected as number }))
      .filter(({ w }) => w > 0 && w < 1);
    const ideal = (w: number) => w / density.methanol + (1 - w) / density.water;
    const shape = (w: number) => [0, 1, 2, 3].map((k) => w * (1 - w) * (1 - 2 * w) ** k);
    const a = leastSquares(
      table.map(({ w }) => shape(w)),
      table.map((p) => 1 / p.density - ideal(p.w)),
    );
    for (let w = 0.02; w < 1; w += 0.02) {
      const again = ideal(w) + shape(w).reduce((sum, f, k) => sum + f * (a[k] ?? 0), 0);
      const shipped = ideal(w) + methanolWaterExcessVolume(w, 293.15);
      expect(Math.abs(1 / again - 1 / shipped), `${w}`).toBeLessThan(0.1);
    }
  });
});
