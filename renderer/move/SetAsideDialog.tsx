import { useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Progress } from '../components/Progress.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { onlyFor, useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useTask } from './use-task.ts';

/** A session.json that no longer fitted its seal: what it says differently, and the way to take it after all. */
export function SetAsideDialog({ file, onClose }: { file: string; onClose: () => void }) {
  const { screens } = useWords();
  const { snapshot, take } = useSession();
  const [meant] = useState(() => onlyFor(snapshot));
  const said = screens.move;
  const read = useAnswer('history.read', { file }, snapshot?.revision ?? 0, snapshot?.folder);
  const task = useTask('history.restore');
  const run = async () => {
    const done = await task.run({ file, ...meant });
    if (!done) return;
    take(done);
    onClose();
  };
  const differs = read.value?.differs ?? [];
  return (
    <Dialog
      title={said.asideTitle}
      onClose={onClose}
      problems={read.problems ?? task.problems}
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={task.isBusy || differs.length === 0}>
            {said.asideTake}
          </Button>
          <CancelButton />
        </>
      }
    >
      <p>{said.asideWhy}</p>
      {read.value && (
        <>
          <p>{differs.length === 0 ? said.differsNot : said.differs}</p>
          <ul>
            {differs.map((field) => (
              <li key={field}>
                <code>{field}</code>
              </li>
            ))}
          </ul>
        </>
      )}
      {read.isBusy && <Progress label={screens.shell.loading} share={null} />}
    </Dialog>
  );
}
