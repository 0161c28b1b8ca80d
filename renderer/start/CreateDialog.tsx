import { useState } from 'react';
import type { Problems } from '../../core/result/index.ts';
import { siOf, type TypedValue } from '../../core/units/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { QuantityField } from '../components/QuantityField.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { emptyDraft, textsOf } from '../entry/change-draft.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Incoming } from '../importing/incoming.ts';
import { today } from '../today.ts';
import { DraftAssign, useDraftAssign } from './DraftAssign.tsx';

/** A new session: a name and a mass, and where logs came along, which of them is before and which after. */
export function CreateDialog({ files, onClose }: { files: readonly Incoming[]; onClose: () => void }) {
  const { screens, show } = useWords();
  const { create, edit } = useSession();
  const showView = useShow();
  const said = screens.start;
  const [suggested] = useState(() => said.suggestedName(show.date(today())));
  const [name, setName] = useState(suggested);
  const [mass, setMass] = useState<TypedValue | null>(null);
  const [isTried, setTried] = useState(false);
  const [isBusy, setBusy] = useState(false);
  const [problems, setProblems] = useState<Problems | null>(null);
  const assign = useDraftAssign(files);

  const run = async () => {
    setTried(true);
    if (name.trim() === '' || mass === null) return;
    setBusy(true);
    const answer = await create({ name: name.trim(), car: { mass_kg: siOf(mass) } });
    if (!answer.ok) {
      setBusy(false);
      setProblems(answer.problems);
      return;
    }
    // What was typed comes back as typed, whatever unit it is kept in.
    await edit({ type: 'car.set', car: answer.value.session.car, asTyped: { 'car.mass_kg': mass } });
    showView({ dialog: null, screen: 'bench', beforeId: null, afterId: null, band: null });
    await assign.importInto(answer.value.session);
  };
  const isUnsaved = isMuchTyped(
    [suggested, '', ...textsOf(emptyDraft)],
    [name, `${mass?.value ?? ''}`, ...textsOf(assign.draft)],
  );
  return (
    <Dialog
      title={files.length > 0 ? said.createTitleWithLogs : said.createTitle}
      onClose={onClose}
      isUnsaved={isUnsaved}
      problems={problems}
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={isBusy}>
            {isBusy ? said.creating : said.create}
          </Button>
          <CancelButton />
        </>
      }
    >
      <QuantityField
        label={said.mass}
        kind="mass"
        value={mass}
        onChange={setMass}
        step={10}
        autoFocus
        hint={said.massHint}
        error={isTried && mass === null ? said.massMissing : undefined}
      />
      <TextField
        label={said.sessionName}
        value={name}
        onChange={setName}
        maxLength={200}
        hint={said.sessionNameHint}
        error={isTried && name.trim() === '' ? said.nameMissing : undefined}
      />
      {files.length > 0 && <DraftAssign assign={assign} />}
    </Dialog>
  );
}
