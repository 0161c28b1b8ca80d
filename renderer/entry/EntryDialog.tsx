import { useState } from 'react';
import { entryTitle } from '../../core/words/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Select } from '../components/Select.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { ChangeFields } from './ChangeFields.tsx';
import { type ChangeDraft, draftOf, emptyDraft, entryPartOf, newEntry, textsOf } from './change-draft.ts';

export type EntryDialogProps = {
  readonly entryId: string | null;
  /** What a new entry starts from: a planned step. */
  readonly first?: ChangeDraft | undefined;
  readonly onClose: () => void;
};

/** Writes a change into the ledger, or mends one that stands there; `entryId` null is a new one. */
export function EntryDialog({ entryId, first, onClose }: EntryDialogProps) {
  const { screens, show } = useWords();
  const { snapshot, edit } = useSession();
  const showView = useShow();
  const ledger = snapshot?.session.ledger ?? [];
  const entry = ledger.find((e) => e.id === entryId) ?? null;
  const [opened] = useState(entry ? draftOf(entry) : (first ?? emptyDraft));
  const [draft, setDraft] = useState(opened);
  const said = screens.entry;

  const save = useOnce(async () => {
    if (entry) {
      if (await edit({ type: 'entry.set', entryId: entry.id, patch: entryPartOf(draft) })) onClose();
      return;
    }
    const added = newEntry(draft);
    if (await edit({ type: 'entry.add', entry: added })) {
      showView({ dialog: null, afterId: added.id, beforeId: null, screen: 'bench' });
    }
  });
  const earlier = ledger.slice(0, entry ? ledger.indexOf(entry) : ledger.length);
  return (
    <Dialog
      title={entry ? said.editTitle : said.addTitle}
      onClose={onClose}
      isUnsaved={isMuchTyped(textsOf(opened), textsOf(draft))}
      actions={
        <>
          <Button look="main" onPress={save}>
            {entry ? screens.shell.done : said.add}
          </Button>
          <CancelButton />
        </>
      }
    >
      {!entry && <p>{said.oneThing}</p>}
      <ChangeFields draft={draft} onChange={setDraft} />
      {earlier.length > 1 && draft.kind !== 'baseline' && (
        <Select
          label={draft.kind === 'nothing' ? said.drivenAgain : said.against}
          options={[
            { id: '', label: said.againstLast },
            ...earlier.map((e, i) => ({ id: e.id, label: `${i} ${entryTitle(e, show)}` })),
          ]}
          value={draft.against ?? ''}
          onChange={(id) => setDraft({ ...draft, against: id === '' ? null : id })}
        />
      )}
    </Dialog>
  );
}
