import { Fragment, useMemo } from 'react';
import type { PullCurve, PullSummary, Snapshot } from '../../core/contract/index.ts';
import { explainPower } from '../../core/power/index.ts';
import { type Entry, wayOfPull } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useLongList } from '../hooks/use-long-list.ts';
import { useWords } from '../hooks/use-words.tsx';
import { AskedHead } from '../where-from/AskedHead.tsx';
import { originOfCard } from '../where-from/origin.ts';
import { PullRow } from './PullRow.tsx';
import styles from './PullsTable.module.css';

type Shown = { readonly entry: Entry; readonly side: 'before' | 'after' };

export type PullsTableProps = {
  readonly snapshot: Snapshot;
  readonly entries: readonly Shown[];
  readonly curves: readonly PullCurve[];
};

type PullOfRun = {
  readonly pull: PullSummary;
  readonly runName: string;
  /** 1 out, -1 back, null not said. */
  readonly way: 1 | -1 | null;
};

/** Pulls of an entry: those in its runs, inside its windows. */
export function pullsOf(snapshot: Snapshot, entry: Entry): PullOfRun[] {
  return entry.runs.flatMap((window) => {
    const run = snapshot.runs.find((r) => r.record.id === window.runId);
    if (!run) return [];
    const { name, direction } = run.record;
    return run.pulls
      .map((pull, n) => ({ pull, runName: name, way: wayOfPull(direction, n) }))
      .filter(
        ({ pull }) =>
          pull.start_s >= (window.from_s ?? Number.NEGATIVE_INFINITY) &&
          pull.end_s <= (window.to_s ?? Number.POSITIVE_INFINITY),
      );
  });
}

/** A line of the table: an entry's heading, or one of its pulls, counted from 1. */
type Line = Shown & Omit<PullOfRun, 'pull'> & { readonly pull: PullSummary | null; readonly number: number };

function linesOf(snapshot: Snapshot, entries: readonly Shown[]): Line[] {
  return entries.flatMap((shown) => [
    { ...shown, pull: null, runName: '', way: null, number: 0 },
    ...pullsOf(snapshot, shown.entry).map((p, i) => ({ ...shown, ...p, number: i + 1 })),
  ]);
}

/** Every pull of the two entries, with the way to leave one out and to take it back in. */
export function PullsTable({ snapshot, entries, curves }: PullsTableProps) {
  const { screens, show } = useWords();
  const said = screens.bench;
  const lines = useMemo(() => linesOf(snapshot, entries), [snapshot, entries]);
  const curveOf = useMemo(() => new Map(curves.map((c) => [c.pullId, c])), [curves]);
  const pinned = useMemo(() => lines.flatMap((line, i) => (line.pull ? [] : [i])), [lines]);
  const long = useLongList<HTMLTableElement>({ count: lines.length, rowHeight_px: 45, pinned });
  const { isLong, parts, active, listProps, rowProps } = long;
  // Where only a part of the rows is drawn, the table says how many there are, and its rows take the focus.
  const grid = isLong ? { role: 'grid', 'aria-rowcount': lines.length + 1 } : {};
  const propsOf = (index: number) => ({
    ...rowProps(index),
    ...(isLong && { 'aria-rowindex': index + 2, tabIndex: index === active ? 0 : -1 }),
  });
  return (
    <table className={cx(table.table, styles.pulls)} {...grid} {...listProps}>
      <thead>
        <tr>
          <th scope="col">{said.pull}</th>
          <th scope="col" className={cx(table.number, styles.head)}>
            {`${said.time}, ${show.unit('time')}`}
          </th>
          <th scope="col" className={cx(table.number, styles.head)}>
            {`${said.range}, ${show.unit('engineSpeed')}`}
          </th>
          <th scope="col" className={cx(table.number, styles.head)}>
            <AskedHead
              title={`${said.peak}, ${show.unit('power')}`}
              origin={originOfCard(explainPower.wheelPower, show)}
            />
          </th>
          <th scope="col" />
        </tr>
      </thead>
      {entries.map(({ entry, side }) => (
        <tbody key={entry.id}>
          {parts.map((part) => {
            const line = lines[part.index];
            if (line?.side !== side) return null;
            if (part.kind === 'gap') {
              return (
                <tr key={`gap-${part.index}`} aria-hidden>
                  <td colSpan={5} className={styles.gap} style={{ height: part.height_px }} />
                </tr>
              );
            }
            return (
              <Fragment key={line.pull?.id ?? entry.id}>
                {line.pull ? (
                  <PullRow
                    pull={line.pull}
                    entryNumber={snapshot.session.ledger.indexOf(line.entry)}
                    number={line.number}
                    runName={line.runName}
                    way={line.way}
                    curve={curveOf.get(line.pull.id) ?? null}
                    {...propsOf(part.index)}
                  />
                ) : (
                  <tr {...propsOf(part.index)}>
                    <th scope="rowgroup" colSpan={5} className={styles[side]}>
                      {entryTitle(entry, show)}
                    </th>
                  </tr>
                )}
              </Fragment>
            );
          })}
        </tbody>
      ))}
    </table>
  );
}
