import { useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';

export type DropPullDialogProps = {
  readonly runId: string;
  readonly pullId: string;
  readonly onClose: () => void;
};

/** Leaves one pull out, with the reason that stays beside it. */
export function DropPullDialog({ runId, pullId, onClose }: DropPullDialogProps) {
  const { screens } = useWords();
  const { snapshot, edit } = useSession();
  const [reason, setReason] = useState('');
  const said = screens.bench;
  const pull = snapshot?.runs.find((r) => r.record.id === runId)?.pulls.find((p) => p.id === pullId);
  const run = useOnce(async () => {
    if (!pull) return onClose();
    const at_s = (pull.start_s + pull.end_s) / 2;
    const done = await edit({
      type: 'pull.edit',
      runId,
      edit: { at_s, action: 'drop', from_s: null, to_s: null, reason: reason.trim() },
    });
    if (done) onClose();
  });
  return (
    <Dialog
      title={said.dropTitle}
      onClose={onClose}
      isUnsaved={!said.reasons.includes(reason) && isMuchTyped([''], [reason])}
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={reason.trim() === ''}>
            {said.drop}
          </Button>
          <CancelButton />
        </>
      }
    >
      <p>{said.dropWhy}</p>
      <Segmented
        label={said.reason}
        options={said.reasons.map((r) => ({ id: r, label: r }))}
        value={said.reasons.includes(reason) ? reason : null}
        onChange={setReason}
      />
      <TextField
        label={said.otherReason}
        hint={reason.trim() === '' ? said.reasonNeeded : undefined}
        value={reason}
        onChange={setReason}
        maxLength={2000}
      />
    </Dialog>
  );
}
