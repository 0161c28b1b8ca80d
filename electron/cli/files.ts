import { readFile } from 'node:fs/promises';
import { type CarFile, CarFileSchema } from '../../core/power/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { isTooDeep, problemsOfSchema } from '../../core/session/index.ts';

/** A file's bytes, or a problem that names it. */
export async function readBytes(path: string): Promise<Result<Uint8Array>> {
  try {
    return ok(await readFile(path));
  } catch (error) {
    return unreadable(path, error);
  }
}

/** What the system said when a file could not be read. */
export function unreadable(path: string, error: unknown) {
  if (codeOf(error) === 'EISDIR') return fail({ code: 'store/is-a-folder', facts: { path } });
  const detail = describe(error);
  return fail({ code: 'terminal/file-unreadable', facts: { detail }, where: { file: path } });
}

const plainCauses: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'reading it is not allowed',
  EPERM: 'reading it is not allowed',
};

function describe(error: unknown): string {
  return plainCauses[codeOf(error)] ?? (error as Error).message;
}

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? '';

/** A JSON file as it stands. */
export async function readJson(path: string): Promise<Result<unknown>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  // Writing it out again would run out of stack.
  if (isTooDeep(bytes.value)) {
    return fail({
      code: 'terminal/not-json',
      facts: { detail: 'it is nested without end' },
      where: { file: path },
    });
  }
  try {
    return ok(JSON.parse(new TextDecoder().decode(bytes.value).replace(/^\uFEFF/, '')));
  } catch (error) {
    const detail = (error as Error).message;
    return fail({ code: 'terminal/not-json', facts: { detail }, where: { file: path } });
  }
}

/** CAR.json, every fault of it named by field. */
export async function readCar(path: string): Promise<Result<CarFile>> {
  const json = await readJson(path);
  if (!json.ok) return json;
  const parsed = CarFileSchema.safeParse(json.value);
  return parsed.success ? ok(parsed.data) : fail(...problemsOfSchema(parsed.error, path));
}
