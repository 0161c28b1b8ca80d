import { type Ledger, verdictToWire } from '../../core/contract/index.ts';
import { measuredOf } from '../../core/ladder/index.ts';
import { type Analyses, entryPulls, type SessionState, sessionLedger } from '../../core/session/index.ts';

/** The ledger with every verdict, as it goes to a screen: without curves and witnesses, which the bench asks for. */
export function ledgerOfSession(
  state: SessionState,
  analyses: Analyses,
  band: readonly [number, number] | null,
): Ledger {
  const pulls = entryPulls(state.session, state.runs, analyses);
  const table = sessionLedger(state.session, pulls, band);
  const lines = table.lines.map(({ verdict, adjustedP: _adjustedP, ...line }) => {
    const found = state.session.ledger
      .find((e) => e.id === line.entryId)
      ?.runs.reduce((sum, r) => sum + (analyses.get(r.runId)?.pulls.length ?? 0), 0);
    const shown = {
      ...line,
      pullsLeftOut: Math.max(0, (found ?? 0) - line.pulls),
      measured: measuredOf(pulls.find((p) => p.id === line.entryId)?.pulls ?? []),
      verdict: null,
    };
    if (!verdict) return shown;
    const { curve: _curve, witnesses: _witnesses, ...short } = verdictToWire(verdict);
    return { ...shown, verdict: short };
  });
  const { ladder, drift, repeatability, notes } = table;
  return {
    lines,
    total: ladder && {
      effect: ladder.effect,
      interval95: [...ladder.interval95],
      fromId: ladder.fromId,
      toId: ladder.toId,
      parts: ladder.parts.map((p) => ({ ...p, entryIds: [...p.entryIds], interval95: [...p.interval95] })),
    },
    drift: drift && { perPull: drift.perPull, interval95: [...drift.interval95] },
    repeatability,
    notes: [...notes],
  };
}
