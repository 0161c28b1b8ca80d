import { useEffect, useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Progress } from '../components/Progress.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useWords } from '../hooks/use-words.tsx';
import { useHost } from '../host/HostProvider.tsx';
import { useOpening } from '../start/use-opening.ts';
import { Sum } from './Sum.tsx';
import { useTask } from './use-task.ts';

/** A zip from another machine: unpacked to a folder of its own, its checksum shown, then opened. */
export function UnpackDialog({ onClose }: { onClose: () => void }) {
  const { screens } = useWords();
  const said = screens.move;
  const host = useHost();
  const [path, setPath] = useState('');
  const [usual, setUsual] = useState('');
  const [typedInto, setInto] = useState<string | null>(null);
  const into = typedInto ?? usual;
  const task = useTask('sessions.unpack');
  const opening = useOpening();
  const isBusy = task.isBusy || opening.isOpening;

  useEffect(() => {
    void host.request('app.info', {}).then((info) => {
      if (info.ok) setUsual(info.value.sessionsFolder);
    });
  }, [host]);

  const { answer } = task;
  return (
    <Dialog
      title={said.unpackTitle}
      onClose={onClose}
      isUnsaved={!answer && isMuchTyped(['', usual], [path, into])}
      problems={task.problems ?? opening.problems}
      actions={
        <>
          {answer ? (
            <Button
              look="main"
              isDisabled={isBusy}
              onPress={async () => (await opening.open(answer.folder)) && onClose()}
            >
              {screens.start.open}
            </Button>
          ) : (
            <Button
              look="main"
              isDisabled={isBusy || path.trim() === '' || into.trim() === ''}
              onPress={() => task.run({ path: path.trim(), into: into.trim() })}
            >
              {said.unpackNow}
            </Button>
          )}
          <CancelButton />
        </>
      }
    >
      {answer ? (
        <>
          <p>
            {said.unpacked(answer.files, answer.checked)} {answer.folder}
          </p>
          <Sum label={said.sum} sum={answer.sha256} />
        </>
      ) : (
        <>
          <p>{said.unpackWhy}</p>
          <TextField label={said.zipToOpen} value={path} onChange={setPath} isDisabled={isBusy} autoFocus />
          <TextField label={said.into} value={into} onChange={setInto} isDisabled={isBusy} />
        </>
      )}
      {isBusy && (
        <Progress
          label={answer ? screens.start.opening : said.unpacking}
          share={null}
          onCancel={task.cancel}
        />
      )}
    </Dialog>
  );
}
