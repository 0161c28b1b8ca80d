import type { PullSummary, Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { pullsOf } from '../bench/PullsTable.tsx';
import type { ShownPull, Side } from './use-traces.ts';

export type NamedPull = ShownPull & {
  /** Place of its entry in the ledger, from 0. */
  readonly entryNumber: number;
  /** In its entry, from 1, as in the table of pulls. */
  readonly number: number;
};

/** The pulls to draw: those that count of the entries on the bench, and pinned ones of any other entry. */
export function shownPulls(
  snapshot: Snapshot,
  onBench: readonly { readonly entry: Entry; readonly side: Exclude<Side, 'pinned'> }[],
  pinned: readonly string[],
): NamedPull[] {
  return snapshot.session.ledger.flatMap((entry, entryNumber) => {
    const side: Side = onBench.find((e) => e.entry.id === entry.id)?.side ?? 'pinned';
    const isShown = (pull: PullSummary) => (side === 'pinned' ? pinned.includes(pull.id) : pull.counts);
    return pullsOf(snapshot, entry)
      .map(({ pull }, i) => ({ pull, side, entryNumber, number: i + 1 }))
      .filter(({ pull }) => isShown(pull));
  });
}
