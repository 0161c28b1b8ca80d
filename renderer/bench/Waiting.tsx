import type { Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { DropArea } from '../components/DropArea.tsx';
import { EmptyState } from '../components/EmptyState.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useImportAll } from '../importing/use-imports.tsx';

/** An entry without pulls: what to drive, and where its log goes. */
export function Waiting({ entry, snapshot }: { entry: Entry; snapshot: Snapshot }) {
  const { screens, show } = useWords();
  const importAll = useImportAll();
  const said = screens.bench;
  const isBaseline = snapshot.session.ledger[0]?.id === entry.id;
  return (
    <EmptyState
      title={isBaseline ? said.baselineNoPulls : said.waitingTitle(entryTitle(entry, show))}
      why={isBaseline ? said.baselineWaitingWhy : said.waitingWhy}
    >
      <DropArea
        label={said.dropLog}
        onFiles={(files) => void importAll(files.map((file) => ({ file, entryId: entry.id })))}
      />
    </EmptyState>
  );
}
