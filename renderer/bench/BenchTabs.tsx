import type { PullCurve, Snapshot, VerdictWire } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { useShow, useView } from '../app/view.tsx';
import { ChannelsTab } from '../channels/ChannelsTab.tsx';
import { LogRemarks } from '../columns/LogRemarks.tsx';
import { RunList } from '../columns/RunList.tsx';
import { Tabs } from '../components/Tabs.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { TableChangeTab } from '../tables/TableChangeTab.tsx';
import { JudgedTab } from './JudgedTab.tsx';
import { NotesTab } from './NotesTab.tsx';
import { PowerRests } from './PowerRests.tsx';
import { PullsTable, pullsOf } from './PullsTable.tsx';
import { WitnessTable } from './WitnessTable.tsx';

export type BenchTabsProps = {
  /** Null where a single entry is shown: it has no witnesses. */
  readonly verdict: VerdictWire | null;
  readonly before: Entry | null;
  readonly after: Entry;
  readonly snapshot: Snapshot;
  readonly curves: readonly PullCurve[];
};

/** Under the plot: witnesses, pulls, channels, how it was judged, notes. */
export function BenchTabs({ verdict, before, after, snapshot, curves }: BenchTabsProps) {
  const { screens } = useWords();
  const view = useView();
  const show = useShow();
  const { tabs } = screens.bench;
  const entries = [
    ...(before ? [{ entry: before, side: 'before' as const }] : []),
    { entry: after, side: 'after' as const },
  ];
  const count = entries.reduce((n, e) => n + pullsOf(snapshot, e.entry).length, 0);
  const parts = [
    ...(verdict
      ? [
          {
            id: 'witnesses',
            title: tabs.witnesses,
            count: verdict.witnesses.length,
            content: <WitnessTable witnesses={verdict.witnesses} />,
          },
        ]
      : []),
    {
      id: 'pulls',
      title: tabs.pulls,
      count,
      content: (
        <>
          <PullsTable snapshot={snapshot} entries={entries} curves={curves} />
          <RunList snapshot={snapshot} entries={entries.map((e) => e.entry)} />
          <LogRemarks snapshot={snapshot} entries={entries.map((e) => e.entry)} />
          <PowerRests snapshot={snapshot} entries={entries.map((e) => e.entry)} />
        </>
      ),
    },
    {
      id: 'channels',
      title: tabs.channels,
      content: (
        <ChannelsTab key={entries.map((e) => e.entry.id).join('>')} snapshot={snapshot} entries={entries} />
      ),
    },
    ...(verdict ? [{ id: 'judged', title: tabs.judged, content: <JudgedTab verdict={verdict} /> }] : []),
    ...(after.change?.table
      ? [
          {
            id: 'cells',
            title: screens.tables.tab,
            count: after.change.table.cells.length,
            content: <TableChangeTab change={after.change.table} />,
          },
        ]
      : []),
    { id: 'notes', title: tabs.notes, content: <NotesTab key={after.id} entry={after} /> },
  ];
  const selected = parts.some((p) => p.id === view.tab) ? view.tab : (parts[0]?.id ?? 'pulls');
  return (
    <Tabs label={screens.bench.label} parts={parts} selected={selected} onSelect={(tab) => show({ tab })} />
  );
}
