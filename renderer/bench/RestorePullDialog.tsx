import { useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';

export type RestorePullDialogProps = {
  readonly runId: string;
  readonly pullId: string;
  readonly onClose: () => void;
};

/** Takes a pull back in, or counts one that ended early; a reason may be given. */
export function RestorePullDialog({ runId, pullId, onClose }: RestorePullDialogProps) {
  const { screens } = useWords();
  const { snapshot, edit } = useSession();
  const [reason, setReason] = useState('');
  const said = screens.bench;
  const pull = snapshot?.runs.find((r) => r.record.id === runId)?.pulls.find((p) => p.id === pullId);
  const run = useOnce(async () => {
    if (!pull) return;
    const at_s = (pull.start_s + pull.end_s) / 2;
    const done = await edit({
      type: 'pull.edit',
      runId,
      edit: { at_s, action: 'restore', from_s: null, to_s: null, reason: reason.trim() },
    });
    if (done) onClose();
  });
  if (!pull) return null;
  const dropped = pull.droppedBecause;
  return (
    <Dialog
      title={dropped === null ? said.countTitle : said.restoreTitle}
      onClose={onClose}
      isUnsaved={isMuchTyped([''], [reason])}
      actions={
        <>
          <Button look="main" onPress={run}>
            {dropped === null ? said.countAnyway : said.restore}
          </Button>
          <CancelButton />
        </>
      }
    >
      <p>{dropped === null ? said.countWhy : said.restoreWhy(dropped)}</p>
      <TextField label={said.reasonIfAny} value={reason} onChange={setReason} maxLength={2000} autoFocus />
    </Dialog>
  );
}
