import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CarFileSchema } from '../../../core/power/index.ts';
import { generateLogs } from '../../../sample-sessions/generate.ts';

const folder = new URL('../../../sample-sessions/', import.meta.url);
const made = generateLogs();

describe('the sample logs', () => {
  it('come out of the generator byte for byte as they lie in the folder', () => {
    expect(made.size).toBeGreaterThan(10);
    for (const [path, text] of made) {
      expect(readFileSync(new URL(path, folder), 'utf8') === text, path).toBe(true);
    }
  });

  it('differ where the seed differs', () => {
    const other = generateLogs(1);
    expect(other.get('logs/1-spray.csv')).not.toBe(made.get('logs/1-spray.csv'));
    expect([...other.keys()]).toEqual([...made.keys()]);
  });

  it('stay small enough to be carried with the program', () => {
    const bytes = [...made.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(1.5e6);
  });

  it('come with a car file that the program reads', () => {
    const car = CarFileSchema.parse(JSON.parse(made.get('car.json') ?? ''));
    expect(car.name).toContain('invented');
    expect(car.conditions?.place).toBe('road');
  });
});
