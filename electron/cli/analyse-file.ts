import { type CarFile, CarSchema, unknownConditions } from '../../core/power/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import { analyseLog, type RunAnalysis } from '../../core/session/index.ts';
import { readLogFile } from './read-log-file.ts';

/** One log from the command line, analysed with nothing known but the car. */
export async function analyseFile(path: string, car: CarFile): Promise<Result<RunAnalysis>> {
  const log = await readLogFile(path);
  if (!log.ok) return log;
  return ok(
    analyseLog(log.value, {
      runId: path,
      record: { columns: [], pullEdits: [] },
      car,
      conditions: car.conditions ?? unknownConditions,
    }),
  );
}

/** Stands in where a verb was called without a car: pulls are found without one, only gears need it. */
export const unknownCar: CarFile = CarSchema.parse({ mass_kg: 1400 });
