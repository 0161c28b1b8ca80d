import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CarFileSchema } from '../../../core/power/index.ts';
import { SetupSchema } from '../../../core/session/index.ts';
import { generateSamples } from '../../../sample-sessions/generate.ts';

const folder = new URL('../../../sample-sessions/', import.meta.url);
const made = generateSamples();

describe('the samples', () => {
  it('come out of the generator byte for byte as they lie in the folder', () => {
    expect(made.size).toBeGreaterThan(10);
    for (const [path, text] of made) {
      const isSame = readFileSync(new URL(path, folder), 'utf8') === text;
      expect(isSame, `${path} is stale: run node sample-sessions/generate.ts`).toBe(true);
    }
  });

  it('leave no file behind that the generator no longer makes', () => {
    for (const part of ['logs', 'loose-logs', 'fenmoor-hatch/runs']) {
      const names = new Set(
        [...made.keys()]
          .filter((p) => p.startsWith(`${part}/`))
          .map((p) => p.slice(part.length + 1).split('/')[0]),
      );
      expect(readdirSync(new URL(part, folder)).sort()).toEqual([...names].sort());
    }
  });

  it('differ where the seed differs', () => {
    const other = generateSamples(1);
    expect(other.get('logs/1-spray-a.csv')).not.toBe(made.get('logs/1-spray-a.csv'));
    expect([...other.keys()]).toEqual([...made.keys()]);
    // Some seconds of sums, many more on a machine that others work on.
  }, 180_000);

  it('stay small enough to be carried with the program', () => {
    const bytes = [...made.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(3e6);
  });

  it('come with a car file that the program reads', () => {
    const car = CarFileSchema.parse(JSON.parse(made.get('car.json') ?? ''));
    expect(car.name).toContain('invented');
    expect(car.conditions?.place).toBe('road');
  });

  it('come with a setup sheet that the program reads', () => {
    const setup = SetupSchema.parse(JSON.parse(made.get('setup.json') ?? ''));
    expect(setup.engine.powerCurve.length).toBeGreaterThanOrEqual(8);
    expect(setup.fluidSystem.fitted).toEqual(['N140']);
    // By bore and stroke, as by the displacement that the simulation breathes.
    const { bore_mm, stroke_mm, displacement_L } = setup.engine;
    const swept_L = (Math.PI / 4) * (bore_mm ?? 0) ** 2 * (stroke_mm ?? 0) * 4e-6;
    expect(swept_L).toBeCloseTo(displacement_L ?? 0, 2);
  });
});
