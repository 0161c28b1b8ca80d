import { useMemo } from 'react';
import type { PullCurve, Snapshot } from '../../core/contract/index.ts';
import { useView } from '../app/view.tsx';
import { useCurves } from '../hooks/use-verdict.ts';
import { useWords } from '../hooks/use-words.tsx';
import { pullsOf } from './PullsTable.tsx';

/** A pull that stays on the plot whichever entries are laid over each other. */
export type PinnedPull = { readonly id: string; readonly name: string; readonly curve: PullCurve };

/** The pinned pulls of the session with their power; one whose entry is gone, or without power, is not there. */
export function usePinned(snapshot: Snapshot): readonly PinnedPull[] {
  const { screens } = useWords();
  const { pinnedPulls } = useView();
  const named = useMemo(
    () =>
      snapshot.session.ledger.flatMap((entry, at) =>
        pullsOf(snapshot, entry).flatMap(({ pull }, i) =>
          pinnedPulls.includes(pull.id)
            ? [{ id: pull.id, entryId: entry.id, name: `${at} · ${screens.bench.pullNumber(i + 1)}` }]
            : [],
        ),
      ),
    [snapshot, pinnedPulls, screens],
  );
  const answer = useCurves([...new Set(named.map((n) => n.entryId))]).value;
  return useMemo(() => {
    const curves = answer?.entries.flatMap((e) => e.pulls) ?? [];
    return named.flatMap(({ id, name }) => {
      const curve = curves.find((c) => c.pullId === id);
      return curve ? [{ id, name, curve }] : [];
    });
  }, [named, answer]);
}
