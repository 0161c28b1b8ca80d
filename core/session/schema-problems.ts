import type { z } from 'zod';
import { expectationOf, type Problem } from '../result/index.ts';

/** Each fault of a schema as a Problem that names the field. */
export function problemsOfSchema(error: z.ZodError, file?: string): [Problem, ...Problem[]] {
  const problems = error.issues.map((issue): Problem => {
    const field = issue.path.join('.');
    return {
      code: 'session/field-invalid',
      facts: { field, expected: expectationOf(issue) },
      where: file === undefined ? { field } : { file, field },
    };
  });
  return problems as [Problem, ...Problem[]];
}
