import type { RequestContext } from '../../core/contract/index.ts';
import { fail, type Result } from '../../core/result/index.ts';

/** How often a cancel is looked for [ms]; the signal may come over a wire and has no event of its own. */
const watchEvery_ms = 20;

/** The answer of some work, or contract/cancelled as soon as it is called off; the work itself then ends in its own time. */
export async function orCalledOff<T>(
  work: Promise<Result<T>>,
  signal: RequestContext['signal'],
): Promise<Result<T>> {
  let watch: ReturnType<typeof setInterval> | undefined;
  const calledOff = new Promise<Result<T>>((resolve) => {
    watch = setInterval(() => {
      if (signal.aborted) resolve(fail({ code: 'contract/cancelled', facts: {} }));
    }, watchEvery_ms);
  });
  try {
    return await Promise.race([work, calledOff]);
  } finally {
    clearInterval(watch);
  }
}
