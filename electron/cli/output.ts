import type { Problem, Problems } from '../../core/result/index.ts';
import { metricUnits } from '../../core/units/index.ts';
import { createShow, problemText, type Show } from '../../core/words/index.ts';

/** Scripts read English and metric whatever the machine speaks; so do logs that are sent to somebody. */
export const terminalShow: Show = createShow('en', metricUnits);

/** An answer of a verb: text for people, data for scripts, and what failed beside it. */
export type Answer = { readonly text: string; readonly json: unknown; readonly failed?: Problems | null };

/** Columns padded to their widest cell; numbers to the right. */
export function table(rows: readonly (readonly string[])[], rightAligned: readonly number[] = []): string {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [i, cell] of row.entries()) widths[i] = Math.max(widths[i] ?? 0, cell.length);
  }
  return rows
    .map((row) =>
      row
        .map((cell, i) =>
          rightAligned.includes(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** The first problem in the fixed shape that scripts rely on; the rest stand beside it. */
export function errorJson(problems: Problems): object {
  const shape = (problem: Problem) => {
    const said = problemText(problem, terminalShow);
    return {
      code: problem.code,
      message: `${said.message} ${said.remedy}`,
      file: problem.where?.file ?? null,
      ...(problem.where?.line === undefined ? {} : { line: problem.where.line }),
      ...(problem.where?.column === undefined ? {} : { column: problem.where.column }),
    };
  };
  const [first, ...rest] = problems;
  return { error: shape(first), ...(rest.length > 0 ? { more: rest.map(shape) } : {}) };
}

/** All problems as lines for a person. */
export function errorText(problems: Problems): string {
  return problems
    .map((problem) => {
      const said = problemText(problem, terminalShow);
      return `${said.message}\n  ${said.remedy}`;
    })
    .join('\n');
}

/** Rounds for JSON: more digits than any measurement holds, fewer than a double prints. */
export function rounded(value: number, digits = 4): number | null {
  if (!Number.isFinite(value)) return null;
  return Number(value.toFixed(digits));
}

export function roundedList(values: ArrayLike<number>, digits = 4): (number | null)[] {
  return Array.from(values, (v) => rounded(v, digits));
}
