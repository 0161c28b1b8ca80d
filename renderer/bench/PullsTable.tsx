import type { PullCurve, PullSummary, Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import { PullRow } from './PullRow.tsx';
import styles from './PullsTable.module.css';

export type PullsTableProps = {
  readonly snapshot: Snapshot;
  readonly entries: readonly { readonly entry: Entry; readonly side: 'before' | 'after' }[];
  readonly curves: readonly PullCurve[];
};

/** Pulls of an entry: those in its runs, inside its windows. */
export function pullsOf(snapshot: Snapshot, entry: Entry): { pull: PullSummary; runName: string }[] {
  return entry.runs.flatMap((window) => {
    const run = snapshot.runs.find((r) => r.record.id === window.runId);
    return (run?.pulls ?? [])
      .filter(
        (p) =>
          p.start_s >= (window.from_s ?? Number.NEGATIVE_INFINITY) &&
          p.end_s <= (window.to_s ?? Number.POSITIVE_INFINITY),
      )
      .map((pull) => ({ pull, runName: run?.record.name ?? '' }));
  });
}

/** Every pull of the two entries, with the way to leave one out and to take it back in. */
export function PullsTable({ snapshot, entries, curves }: PullsTableProps) {
  const { screens, show } = useWords();
  const said = screens.bench;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{said.pull}</th>
          <th scope="col" className={table.number}>
            {said.time}
          </th>
          <th scope="col" className={table.number}>
            {said.range}
          </th>
          <th scope="col" className={table.number}>
            {said.peak}
          </th>
          <th scope="col" />
          <th scope="col" />
        </tr>
      </thead>
      {entries.map(({ entry, side }) => (
        <tbody key={entry.id}>
          <tr>
            <th scope="rowgroup" colSpan={6} className={styles[side]}>
              {entryTitle(entry, show)}
            </th>
          </tr>
          {pullsOf(snapshot, entry).map(({ pull, runName }, i) => (
            <PullRow
              key={pull.id}
              pull={pull}
              number={i + 1}
              runName={runName}
              curve={curves.find((c) => c.pullId === pull.id) ?? null}
            />
          ))}
        </tbody>
      ))}
    </table>
  );
}
