import { useState } from 'react';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { emptyDraft, textsOf } from '../entry/change-draft.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { AssignFields } from './AssignFields.tsx';
import { guessTargets, isMuchChosen } from './assign-files.ts';
import { type Incoming, namedLog } from './incoming.ts';
import { tasksOf } from './tasks-of.ts';
import { useImportAll } from './use-imports.tsx';

/** Asks where logs belong that came into an open session. */
export function AssignDialog({ files, onClose }: { files: readonly Incoming[]; onClose: () => void }) {
  const { screens } = useWords();
  const { snapshot, edit } = useSession();
  const show = useShow();
  const { after } = useSelection();
  const importAll = useImportAll();
  const ledger = snapshot?.session.ledger ?? [];
  const [guessed] = useState(() => guessTargets(files, ledger, after?.id ?? null));
  const [targets, setTargets] = useState(guessed);
  const [draft, setDraft] = useState(emptyDraft);

  const run = useOnce(async () => {
    const { tasks, edits, newId } = tasksOf(files, targets, draft);
    if (edits.length > 0 && !(await edit(edits))) return;
    show({ dialog: null, screen: 'bench', ...(newId ? { afterId: newId, beforeId: null } : {}) });
    await importAll(tasks);
  });
  return (
    <Dialog
      title={screens.importing.title}
      onClose={onClose}
      isUnsaved={isMuchChosen(guessed, targets) || isMuchTyped(textsOf(emptyDraft), textsOf(draft))}
      actions={
        <>
          <Button look="main" onPress={run}>
            {screens.importing.import}
          </Button>
          <CancelButton />
        </>
      }
    >
      <p>{screens.importing.keptAsIs}</p>
      <AssignFields
        logs={files.map(namedLog)}
        ledger={ledger}
        targets={targets}
        onTargets={setTargets}
        draft={draft}
        onDraft={setDraft}
        noneLabel={screens.importing.toNone}
      />
    </Dialog>
  );
}
