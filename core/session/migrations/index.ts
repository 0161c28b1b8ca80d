import { fail, ok, type Result } from '../../result/index.ts';
import { problemsOfSchema } from '../schema-problems.ts';
import { type Session, SessionSchema } from '../session.ts';
import { from0to1 } from './from-0-to-1.ts';

type Json = Record<string, unknown>;

/** Each takes version n (its index) to n + 1. Never edited or renumbered once released. */
const migrations: readonly ((old: Json) => Json)[] = [from0to1];

/** The version this program writes: the end of the list. */
export const currentSchemaVersion = migrations.length;

function isRecord(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/**
 * A parsed session.json of any known version, as a current session.
 *
 * Errors: session/newer-version, session/no-version, session/field-invalid (one per field).
 */
export function readSession(
  json: unknown,
  file = 'session.json',
): Result<{ session: Session; migratedFrom: number | null }> {
  const version = isRecord(json) ? json.schemaVersion : undefined;
  if (!isRecord(json) || typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return fail({ code: 'session/no-version', facts: {}, where: { file } });
  }
  if (version > currentSchemaVersion) {
    return fail({
      code: 'session/newer-version',
      facts: { version, known: currentSchemaVersion },
      where: { file },
    });
  }
  let current = json;
  for (const migrate of migrations.slice(version)) {
    try {
      current = migrate(current);
    } catch {
      // An old file that lacks what its own version promised is the file's fault, not ours.
      const expected = { kind: 'promised', version } as const;
      return fail({ code: 'session/field-invalid', facts: { field: '', expected }, where: { file } });
    }
  }
  const parsed = SessionSchema.safeParse(current);
  if (!parsed.success) return fail(...problemsOfSchema(parsed.error, file));
  const twice = entryTwice(parsed.data);
  if (twice !== null) {
    const field = `ledger.${twice}.id`;
    return fail({
      code: 'session/field-invalid',
      facts: { field, expected: { kind: 'own-id' } },
      where: { file },
    });
  }
  return ok({ session: parsed.data, migratedFrom: version === currentSchemaVersion ? null : version });
}

/** Place of the first entry whose id stands twice, as after copying lines by hand: an edit would change both. */
function entryTwice({ ledger }: Session): number | null {
  const ids = ledger.map((entry) => entry.id);
  const at = ids.findIndex((id, i) => ids.indexOf(id) !== i);
  return at < 0 ? null : at;
}
