import { useState } from 'react';
import type { SessionTable } from '../../core/session/index.ts';
import { Button } from '../components/Button.tsx';
import { EmptyState } from '../components/EmptyState.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useAhead } from '../hooks/use-ahead.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from '../ladder/LadderScreen.module.css';
import { ReadTableDialog } from './ReadTableDialog.tsx';
import { TableBody, type TablePatch } from './TableBody.tsx';
import { TableSwitch } from './TableSwitch.tsx';
import { useTable } from './use-table.ts';

/** The engine control's tables: see, step where the spray covers, carry back, write down. */
export function TablesScreen() {
  const { snapshot } = useSession();
  const { screens } = useWords();
  const [chosenId, setChosenId] = useState<string | null>(null);
  const [isReading, setReading] = useState(false);
  if (!snapshot) return null;
  const { session } = snapshot;
  const table = session.tables.find((t) => t.id === chosenId) ?? session.tables[0] ?? null;
  const dialog = isReading && (
    <ReadTableDialog
      session={session}
      onClose={() => setReading(false)}
      onAdded={(id) => {
        setChosenId(id);
        setReading(false);
      }}
    />
  );
  if (!table)
    return (
      <main className={styles.main} id="main" tabIndex={-1}>
        <EmptyState title={screens.tables.emptyTitle} why={screens.tables.emptyWhy}>
          <Button look="main" isDisabled={snapshot.readOnly !== null} onPress={() => setReading(true)}>
            {screens.tables.read}
          </Button>
        </EmptyState>
        {dialog}
      </main>
    );
  const head = (
    <TableSwitch
      tables={session.tables}
      table={table}
      onChoose={setChosenId}
      onRead={() => setReading(true)}
    />
  );
  return (
    <>
      <TableOf key={table.id} session={session} table={table} head={head} />
      {dialog}
    </>
  );
}

const withPatch = (table: SessionTable, patch: TablePatch): SessionTable => ({ ...table, ...patch });

function TableOf({
  session,
  table,
  head,
}: Pick<Parameters<typeof TableBody>[0], 'session' | 'head'> & {
  table: SessionTable;
}) {
  const { edit } = useSession();
  const [shown, put] = useAhead(table, withPatch);
  const now = useTable(session, shown);
  const keep = (patch: TablePatch, joinKey?: string) =>
    put(patch, () => edit({ type: 'table.set', tableId: table.id, patch }, joinKey));
  if (now.ok) return <TableBody session={session} now={now.value} head={head} onKeep={keep} />;
  return (
    <main className={styles.main} id="main" tabIndex={-1}>
      {head}
      <ProblemList problems={now.problems} />
    </main>
  );
}
