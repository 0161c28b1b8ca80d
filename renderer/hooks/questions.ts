import type { RequestInput, RequestName, Snapshot } from '../../core/contract/index.ts';
import type { View } from '../app/view.tsx';

/** Name, input, revision and subject of a question about the session, as `useAnswer` takes them. */
type About<N extends RequestName> = readonly [
  name: N,
  input: RequestInput<N> | null,
  revision: number,
  subject: string,
];

const bandOf = (band: View['band']) => band && ([...band] as [number, number]);

/** The comparison of two entries; nothing is asked while one of them is missing. */
export function verdictQuestion(
  snapshot: Snapshot | null,
  before: string | null,
  after: string | null,
  band: View['band'],
): About<'entries.compare'> {
  const input = snapshot && before && after ? { before, after, band: bandOf(band) } : null;
  return ['entries.compare', input, snapshot?.revision ?? 0, `${before}>${after}`];
}

/** Effects and verdicts of all entries. */
export function ledgerQuestion(snapshot: Snapshot | null, band: View['band']): About<'ledger.get'> {
  const input = snapshot && { band: bandOf(band) };
  return ['ledger.get', input, snapshot?.revision ?? 0, snapshot?.folder ?? ''];
}
