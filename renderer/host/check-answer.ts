import { ProblemSchema, type RequestName, type RequestOutput, requests } from '../../core/contract/index.ts';
import { fail, ok, type Problem, type Result } from '../../core/result/index.ts';

/**
 * What came over the wire, as a Result of the request's own type. An answer of another shape means that screen
 * and host are of different versions, which is a problem to show and not a thing to draw.
 */
export function checkAnswer<N extends RequestName>(name: N, answer: unknown): Result<RequestOutput<N>> {
  if (typeof answer === 'object' && answer !== null && 'ok' in answer) {
    if (answer.ok === true && 'value' in answer) {
      const checked = requests[name].output.safeParse(answer.value);
      if (checked.success) return ok(checked.data as RequestOutput<N>);
      const issue = checked.error.issues[0];
      return internal(`${name}: ${issue?.path.join('.')} ${issue?.message}`);
    }
    if (answer.ok === false && 'problems' in answer && Array.isArray(answer.problems)) {
      const problems = answer.problems.flatMap((p): Problem[] => {
        const checked = ProblemSchema.safeParse(p);
        return checked.success ? [checked.data] : [];
      });
      const [first, ...rest] = problems;
      if (first) return fail(first, ...rest);
    }
  }
  return internal(`${name}: the answer is no result`);
}

export function internal(detail: string) {
  return fail({ code: 'contract/internal', facts: { detail } });
}

export function hostGone() {
  return fail({ code: 'contract/host-gone', facts: {} });
}

export function cancelled() {
  return fail({ code: 'contract/cancelled', facts: {} });
}
