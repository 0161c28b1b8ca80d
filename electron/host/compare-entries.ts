import type { Verdict } from '../../core/compare/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { type Analyses, entryPulls, judgeEntries, type SessionState } from '../../core/session/index.ts';

/** Any two entries of the session judged. */
export function compareEntries(
  state: SessionState,
  analyses: Analyses,
  wanted: {
    readonly before: string;
    readonly after: string;
    readonly band: readonly [number, number] | null;
  },
): Result<Verdict> {
  const { session, runs } = state;
  for (const entryId of [wanted.before, wanted.after]) {
    if (!session.ledger.some((e) => e.id === entryId)) {
      return fail({ code: 'session/no-entry', facts: { entryId } });
    }
  }
  const pair = { beforeId: wanted.before, afterId: wanted.after };
  return ok(judgeEntries(session, entryPulls(session, runs, analyses), pair, wanted.band));
}
