import { useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Progress } from '../components/Progress.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { onlyFor, useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { Sum } from './Sum.tsx';
import { useTask } from './use-task.ts';

/** The open session as one zip, to take it to another machine. */
export function PackDialog({ onClose }: { onClose: () => void }) {
  const { screens } = useWords();
  const { snapshot } = useSession();
  const said = screens.move;
  const [usual] = useState(`${snapshot?.folder ?? ''}.zip`);
  const [meant] = useState(() => onlyFor(snapshot));
  const [path, setPath] = useState(usual);
  const { isBusy, answer, problems, cancel, run } = useTask('session.pack');
  return (
    <Dialog
      title={said.packTitle}
      onClose={onClose}
      isUnsaved={!answer && isMuchTyped([usual], [path])}
      problems={problems}
      actions={
        answer ? (
          <Button look="main" onPress={onClose}>
            {screens.shell.done}
          </Button>
        ) : (
          <>
            <Button
              look="main"
              onPress={() => run({ path: path.trim(), ...meant })}
              isDisabled={isBusy || path.trim() === ''}
            >
              {said.packNow}
            </Button>
            <CancelButton />
          </>
        )
      }
    >
      {answer ? (
        <>
          <p>
            {said.packed(answer.files)} {answer.path}
          </p>
          <Sum label={said.sum} sum={answer.sha256} />
          <p>{said.sumWhy}</p>
        </>
      ) : (
        <>
          <p>{said.packWhy}</p>
          <TextField label={said.zipPath} value={path} onChange={setPath} isDisabled={isBusy} autoFocus />
          {isBusy && <Progress label={said.packing} share={null} onCancel={cancel} />}
        </>
      )}
    </Dialog>
  );
}
