import { useEffect, useState } from 'react';
import { Button } from '../components/Button.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Progress } from '../components/Progress.tsx';
import { TextField } from '../components/TextField.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useHost } from '../host/HostProvider.tsx';
import { useOpening } from '../start/use-opening.ts';
import { useTask } from './use-task.ts';

/** A zip from another machine: unpacked to a folder of its own, then opened. */
export function UnpackDialog({ onClose }: { onClose: () => void }) {
  const { screens } = useWords();
  const said = screens.move;
  const host = useHost();
  const { say } = useToasts();
  const [path, setPath] = useState('');
  const [into, setInto] = useState('');
  const task = useTask('sessions.unpack');
  const opening = useOpening();
  const isBusy = task.isBusy || opening.isOpening;

  useEffect(() => {
    void host.request('app.info', {}).then((info) => {
      if (info.ok) setInto((typed) => typed || info.value.sessionsFolder);
    });
  }, [host]);

  const run = async () => {
    const done = await task.run({ path: path.trim(), into: into.trim() });
    if (!done || !(await opening.open(done.folder))) return;
    say(`${said.sum}: ${done.sha256}`);
    onClose();
  };
  return (
    <Dialog
      title={said.unpackTitle}
      isOpen
      onClose={onClose}
      problems={task.problems ?? opening.problems}
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={isBusy || path.trim() === '' || into.trim() === ''}>
            {said.unpackNow}
          </Button>
          <Button onPress={onClose}>{screens.shell.cancel}</Button>
        </>
      }
    >
      <p>{said.unpackWhy}</p>
      <TextField label={said.zipToOpen} value={path} onChange={setPath} isDisabled={isBusy} autoFocus />
      <TextField label={said.into} value={into} onChange={setInto} isDisabled={isBusy} />
      {isBusy && <Progress label={said.unpacking} share={null} onCancel={task.cancel} />}
    </Dialog>
  );
}
