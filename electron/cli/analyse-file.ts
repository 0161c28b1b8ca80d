import { type CarFile, CarSchema, unknownConditions } from '../../core/power/index.ts';
import type { Result } from '../../core/result/index.ts';
import { analyseRun, type RunAnalysis } from '../../core/session/index.ts';
import { readBytes } from './files.ts';

/** One log from the command line, analysed with nothing known but the car. */
export async function analyseFile(path: string, car: CarFile): Promise<Result<RunAnalysis>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  return analyseRun(bytes.value, {
    file: path,
    runId: path,
    record: { columns: [], pullEdits: [] },
    car,
    conditions: car.conditions ?? unknownConditions,
  });
}

/** Stands in where a verb was called without a car: pulls are found without one, only gears need it. */
export const unknownCar: CarFile = CarSchema.parse({ mass_kg: 1400 });
