import { fail, ok, type Result } from '../../core/result/index.ts';
import { problemsOfSchema, type RunRecord, RunRecordSchema } from '../../core/session/index.ts';

/** The version this program writes. */
const currentVersion = 1;

/**
 * A parsed run.json.
 *
 * Errors: session/newer-version, session/field-invalid (one per field).
 */
export function readRunRecord(json: Record<string, unknown>, file: string): Result<RunRecord> {
  const { schemaVersion } = json;
  if (typeof schemaVersion === 'number' && schemaVersion > currentVersion) {
    return fail({
      code: 'session/newer-version',
      facts: { version: schemaVersion, known: currentVersion },
      where: { file },
    });
  }
  const parsed = RunRecordSchema.safeParse(json);
  return parsed.success ? ok(parsed.data) : fail(...problemsOfSchema(parsed.error, file));
}
