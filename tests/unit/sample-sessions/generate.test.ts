import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
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

  it('are all that lies in the folder: logs, truth, and the session with its second copies', () => {
    const ownHand = /^(README\.md|generate\.ts|session-folder\.ts|simulation\/[a-z-]+\.ts)$/;
    const lying = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) =>
        relative(fileURLToPath(folder), join(entry.parentPath, entry.name)).replaceAll('\\', '/'),
      )
      // What reading a log gave; the program makes it anew wherever it differs, and it is not in the repository.
      .filter((path) => !ownHand.test(path) && !path.endsWith('/channels.bin'));
    expect(lying.sort()).toEqual([...made.keys()].sort());
    expect(lying.filter((path) => path.includes('/history/'))).toHaveLength(14);
  });

  it('carry no cache: each would be stale with the next change of the reader', () => {
    expect(readFileSync(new URL('../.gitignore', folder), 'utf8')).toContain('\nchannels.bin\n');
  });

  it('differ where the seed differs', () => {
    const other = generateSamples(1);
    expect(other.get('logs/1-spray-a.csv')).not.toBe(made.get('logs/1-spray-a.csv'));
    // The name of a second copy holds the hash of what is in it.
    const names = (samples: typeof made) =>
      [...samples.keys()].map((p) => p.replace(/-[0-9a-f]{12}\.json$/, ''));
    expect(names(other)).toEqual(names(made));
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
