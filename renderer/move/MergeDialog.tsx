import { useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Progress } from '../components/Progress.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useAnswer } from '../hooks/use-answer.ts';
import { onlyFor, useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { ConflictList } from './ConflictList.tsx';
import { useTask } from './use-task.ts';

/** Another copy of the open session brought into it, and what earlier merges left to decide. */
export function MergeDialog({ onClose }: { onClose: () => void }) {
  const { screens, note } = useWords();
  const { snapshot, take } = useSession();
  const said = screens.move;
  const [meant] = useState(() => onlyFor(snapshot));
  const [path, setPath] = useState('');
  const task = useTask('session.merge');
  const settling = useTask('merge.settle');
  const listed = useAnswer('merge.list', {}, snapshot?.revision ?? 0, snapshot?.folder);
  const conflicts = listed.value?.conflicts ?? [];
  const report = task.answer?.report;

  const merge = async () => {
    const done = await task.run({ path: path.trim(), ...meant });
    if (!done) return;
    take(done.snapshot);
    // What was changed in two ways may be all there is, and then the session itself is as it was.
    listed.retry();
  };
  return (
    <Dialog
      title={said.mergeTitle}
      shape={conflicts.length > 0 ? 'wide' : 'box'}
      onClose={onClose}
      isUnsaved={!report && isMuchTyped([''], [path])}
      problems={task.problems ?? settling.problems ?? listed.problems}
      actions={
        report ? (
          <Button look="main" onPress={onClose}>
            {screens.shell.done}
          </Button>
        ) : (
          <>
            <Button look="main" onPress={merge} isDisabled={task.isBusy || path.trim() === ''}>
              {said.mergeNow}
            </Button>
            <CancelButton />
          </>
        )
      }
    >
      {report ? (
        <div>
          <p>{said.newRuns(report.newRuns.map((r) => r.name))}</p>
          {report.notices.map((n) => (
            <p key={note(n)}>{note(n)}</p>
          ))}
          {report.conflicts.length === 0 && <p>{said.agreed}</p>}
        </div>
      ) : (
        <>
          <p>{said.mergeWhy}</p>
          <TextField
            label={said.otherPath}
            value={path}
            onChange={setPath}
            isDisabled={task.isBusy}
            autoFocus
          />
          {task.isBusy && <Progress label={said.merging} share={null} />}
        </>
      )}
      {snapshot && conflicts.length > 0 && (
        <ConflictList
          conflicts={conflicts}
          parts={snapshot}
          isBusy={settling.isBusy}
          onTake={async ({ record, index }, side) => {
            const done = await settling.run({ record, index, take: side, ...onlyFor(snapshot) });
            if (done) take(done);
          }}
        />
      )}
    </Dialog>
  );
}
