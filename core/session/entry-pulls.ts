import type { EntryPulls, PullEvidence } from '../compare/index.ts';
import { entryBefore } from './edit.ts';
import { evidenceOfRun, type RunAnalysis } from './run-analysis.ts';
import type { RunRecord } from './run-record.ts';
import type { Session } from './session.ts';

/** Runs as analysed so far, by id; one that could not be read is simply not there. */
export type Analyses = ReadonlyMap<string, RunAnalysis>;

/**
 * All entries with the pulls that count, in the order they were driven. An entry of kind `nothing` is the one
 * it stands against, driven again.
 */
export function entryPulls(
  session: Session,
  records: Readonly<Record<string, RunRecord>>,
  analyses: Analyses,
): EntryPulls[] {
  let order = 0;
  return session.ledger.map((entry): EntryPulls => {
    const pulls: PullEvidence[] = [];
    for (const part of entry.runs) {
      const analysis = analyses.get(part.runId);
      const record = records[part.runId];
      if (!analysis || !record) continue;
      const conditions = record.conditions ?? entry.conditions ?? session.conditions;
      const found = evidenceOfRun(analysis, {
        entryId: entry.id,
        firstOrder: order,
        car: session.car,
        conditions,
        direction: record.direction,
        from_s: part.from_s,
        to_s: part.to_s,
      });
      order += found.length;
      pulls.push(...found);
    }
    const repeats = entry.kind === 'nothing' ? (entryBefore(session, entry.id)?.id ?? null) : null;
    return { id: entry.id, repeats, pulls };
  });
}
