import { type Ledger, verdictToWire } from '../../core/contract/index.ts';
import { type Analyses, entryPulls, type SessionState, sessionLedger } from '../../core/session/index.ts';

/** The ledger with every verdict, as it goes to a screen: without curves and witnesses, which the bench asks for. */
export function ledgerOfSession(
  state: SessionState,
  analyses: Analyses,
  band: readonly [number, number] | null,
): Ledger {
  const pulls = entryPulls(state.session, state.runs, analyses);
  const lines = sessionLedger(state.session, pulls, band).map(({ verdict, ...line }) => {
    const found = state.session.ledger
      .find((e) => e.id === line.entryId)
      ?.runs.reduce((sum, r) => sum + (analyses.get(r.runId)?.pulls.length ?? 0), 0);
    if (!verdict) return { ...line, pullsLeftOut: (found ?? 0) - line.pulls, verdict: null };
    const { curve: _curve, witnesses: _witnesses, ...short } = verdictToWire(verdict);
    return { ...line, pullsLeftOut: (found ?? 0) - line.pulls, verdict: short };
  });
  return { lines, total: null, notes: [] };
}
