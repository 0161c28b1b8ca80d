import { useState } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { emptyDraft, textsOf } from '../entry/change-draft.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { AssignFields } from './AssignFields.tsx';
import { isMuchChosen, noEntry } from './assign-files.ts';
import { logPlaces, placeEdits, targetOf } from './log-places.ts';
import { moveRemarks } from './move-remarks.ts';

/** Brings logs that came into the wrong entry, or into none, to where they belong. */
export function MoveLogsDialog({ runId, onClose }: { runId: string | null; onClose: () => void }) {
  const { snapshot } = useSession();
  return snapshot && <OpenMove snapshot={snapshot} runId={runId} onClose={onClose} />;
}

type OpenMoveProps = {
  readonly snapshot: Snapshot;
  readonly runId: string | null;
  readonly onClose: () => void;
};

function OpenMove({ snapshot, runId, onClose }: OpenMoveProps) {
  const { screens, show } = useWords();
  const { edit, undo, latest } = useSession();
  const { say } = useToasts();
  const showView = useShow();
  // As they stood when the dialog opened: what changes meanwhile is refused by name.
  const [places] = useState(() => logPlaces(snapshot, runId));
  const [targets, setTargets] = useState(() => places.map(targetOf));
  const [draft, setDraft] = useState(emptyDraft);
  const said = screens.importing.move;
  const { ledger } = snapshot.session;
  const nameOf = (id: string, entries = ledger) => {
    const at = entries.findIndex((e) => e.id === id);
    const entry = entries[at];
    return entry ? `${at} ${entryTitle(entry, show)}` : '';
  };
  const moved = places.flatMap((place, i) => (targets[i] === targetOf(place) ? [] : [{ place, at: i }]));
  const [first] = moved;

  const run = useOnce(async () => {
    const { edits, newId } = placeEdits(places, targets, draft);
    if (!first || !(await edit(edits))) return;
    const entries = latest()?.session.ledger ?? ledger;
    const { name } = first.place;
    const to = newId ?? targets[first.at] ?? noEntry;
    const told =
      moved.length > 1
        ? said.movedMany(moved.length)
        : to === noEntry
          ? said.takenOut(name)
          : said.moved(name, nameOf(to, entries));
    say(told, { label: screens.shell.undo, run: () => void undo() });
    showView({ dialog: null, ...(newId ? { screen: 'bench', afterId: newId, beforeId: null } : {}) });
  });
  return (
    <Dialog
      title={runId !== null && places[0] ? said.title(places[0].name) : said.titleAll}
      onClose={onClose}
      isUnsaved={
        isMuchChosen(places.map(targetOf), targets) || isMuchTyped(textsOf(emptyDraft), textsOf(draft))
      }
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={moved.length === 0}>
            {said.open}
          </Button>
          <CancelButton />
        </>
      }
    >
      <p>{said.intro}</p>
      <AssignFields
        logs={places}
        ledger={ledger}
        targets={targets}
        onTargets={setTargets}
        draft={draft}
        onDraft={setDraft}
        noneLabel={said.toNone}
      />
      {moveRemarks(ledger, places, targets, { nameOf, ...said }).map((remark) => (
        <p key={remark} role="status">
          {remark}
        </p>
      ))}
    </Dialog>
  );
}
