import type { Ledger, VerdictWire } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';

/**
 * Whether a gain still wants the earlier setting driven again: nothing in the session was driven twice, so the day
 * itself may have moved, and no later change stands on top yet, so going back is one change away.
 */
export function isDriftOpen(
  kind: VerdictWire['kind'],
  drift: Ledger['drift'],
  after: Entry,
  ledger: readonly Entry[],
): boolean {
  const later = ledger.slice(ledger.indexOf(after) + 1).filter((e) => e.state === 'kept');
  return kind === 'gain' && drift === null && later.length === 0;
}
